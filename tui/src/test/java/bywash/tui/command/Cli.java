package bywash.tui.command;

import java.io.PrintWriter;
import java.io.StringWriter;

/** Runs a command in this process. @param out what it printed; @param err what it said on standard error */
record Cli(int code, String out, String err) {
    static Cli run(Object... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] args = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            args[i] = words[i].toString();
        }
        int code = Main.commandLine()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(args);
        return new Cli(code, out.toString(), err.toString());
    }
}
