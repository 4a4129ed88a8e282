/** The practice folder: every writer's part of it, and the page that links to them. */
package countstave.folder;
