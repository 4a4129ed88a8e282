/** The practice page: one HTML file with the chart, a click that follows the plan, and the voice. */
package countstave.page;
