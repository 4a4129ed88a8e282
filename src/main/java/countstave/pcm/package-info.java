/** Linear samples of sound files as numbers: what whoever reads one needs, takes and recordings of a voice alike. */
package countstave.pcm;
