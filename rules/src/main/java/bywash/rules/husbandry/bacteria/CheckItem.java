package bywash.rules.husbandry.bacteria;

/**
 * One line of a checklist.
 *
 * @param what what must hold
 * @param need the figure it must meet
 * @param present what is known, with its age
 * @param answer whether it holds
 */
public record CheckItem(String what, String need, String present, Answer answer) {

    /** A gap is never "all is well". */
    public enum Answer {
        YES("yes"),
        NO("no"),
        NOT_KNOWN("not known"),
        /** Something only the grower can say. */
        ASK("you say");

        private final String word;

        Answer(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
