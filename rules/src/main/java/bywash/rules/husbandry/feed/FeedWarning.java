package bywash.rules.husbandry.feed;

/**
 * Something that the feed will bring about.
 *
 * @param what what will happen, with its figures
 * @param why what it rests on
 * @param act what to do
 */
public record FeedWarning(String what, String why, String act) {}
