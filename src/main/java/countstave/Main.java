package countstave;

/** The process: hands the arguments over and ends with the exit code. */
public final class Main {

    private Main() {
    }

    public static void main(String[] args) {
        System.exit(0);
    }
}
