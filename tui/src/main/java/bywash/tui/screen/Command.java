package bywash.tui.screen;

/** What a key does. */
enum Command {
    ACKNOWLEDGE("ack", "Acknowledge; asks whether all or the chosen one"),
    ACKNOWLEDGE_ALL("all of them", "Acknowledge all alarms"),
    ACKNOWLEDGE_ONE("the chosen one", "Acknowledge the chosen alarm"),
    OPEN("open", "Open the chosen alarm: why, how long, what to do"),
    NEXT("next", "Choose the next alarm or field"),
    PREVIOUS("previous", "Choose the alarm or field before"),
    NEXT_NEW("next new", "Choose the next alarm that is not acknowledged"),
    TOP_UP("top-up", "Declare a top-up before water runs"),
    END_TOP_UP("end top-up", "End the top-up and have the line checked"),
    NEXT_CHOICE("change", "Next choice of this field"),
    PREVIOUS_CHOICE("change back", "Choice before, of this field"),
    ERASE("erase", "Erase the last figure typed"),
    CONFIRM("confirm", "Confirm; a warning asks for it a second time"),
    BACK("back", "Back, nothing done"),
    HELP("help", "Show all keys"),
    LEAVE("leave", "Leave the screen; asks first"),
    LEAVE_NOW("yes, leave", "Leave: the terminal is put back as it was");

    private final String word;
    private final String sentence;

    Command(String word, String sentence) {
        this.word = word;
        this.sentence = sentence;
    }

    /** For the bottom line. */
    String word() {
        return word;
    }

    /** For the help. */
    String sentence() {
        return sentence;
    }
}
