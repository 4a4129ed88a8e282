package countstave.cli;

import countstave.chart.layout.Chart;
import countstave.chart.svg.SvgDrawing;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.Progress;
import countstave.files.SafeFile;
import countstave.files.SafeFolder;
import countstave.score.ScoreException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A chart as drawings: {@code chart.svg}, {@code chart-2.svg} ..., one a page, all of them or none. */
final class ChartPages {

    static final String ENDING = ".svg";

    private ChartPages() {
    }

    /** @param first where the first page goes */
    static void write(Chart chart, Path first, boolean force, Console console) {
        List<SafeFolder.Entry> files = new ArrayList<>();
        for (String page : SvgDrawing.pages(chart)) {
            byte[] content = page.getBytes(StandardCharsets.UTF_8);
            files.add(new SafeFolder.Entry(name(first, files.size() + 1), content.length, out -> out.write(content)));
        }
        SafeFolder.write(SafeFile.folder(first), force, files, SafeFolder.Large.NONE, new Progress(console.err(), false));
        for (SafeFolder.Entry file : files) {
            console.out().println("wrote " + FileNames.shown(FileNames.beside(first, file.name())));
        }
        Path next = FileNames.beside(first, name(first, files.size() + 1));
        if (Files.exists(next)) {
            console.tell(FileNames.shown(next) + " is no page of this chart: it was there before");
        }
    }

    private static String name(Path first, int page) {
        String name = FileNames.text(first.getFileName());
        if (name == null) {
            throw new ScoreException("the name " + FileNames.shown(first) + " is no text in UTF-8, so that its further pages"
                    + " cannot be called like it; choose another with -o");
        }
        int stem = name.length() - ENDING.length();
        return page == 1 ? name : name.substring(0, stem) + "-" + page + name.substring(stem);
    }
}
