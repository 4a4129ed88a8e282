/**
 * What leaves the process, and how: files that are written wholly or not at all, folders of files that belong together,
 * standard output, and the line on a terminal that says how far the work is.
 */
package countstave.files;
