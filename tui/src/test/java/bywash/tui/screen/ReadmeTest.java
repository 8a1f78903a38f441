package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The pictures in the README are those that the screens are compared with: after {@code <!-- picture NAME -->}. */
final class ReadmeTest {
    private static final Path README = Path.of("../README.md");
    private static final Path PICTURES = Path.of("src/test/resources/pictures");
    private static final Pattern PICTURE = Pattern.compile("<!-- picture (\\S+) -->\n```\n(.*?)```\n", Pattern.DOTALL);

    @Test
    void everyPictureInTheReadmeIsOfTheScreensAsTheyAre() throws IOException {
        String text = Files.readString(README);
        StringBuilder renewed = new StringBuilder();
        Matcher matcher = PICTURE.matcher(text);
        List<String> names = new ArrayList<>();
        while (matcher.find()) {
            names.add(matcher.group(1));
            String picture = Files.readString(PICTURES.resolve(matcher.group(1) + ".txt"));
            String block = "<!-- picture " + matcher.group(1) + " -->\n```\n" + picture + "```\n";
            matcher.appendReplacement(renewed, Matcher.quoteReplacement(block));
        }
        matcher.appendTail(renewed);
        assertTrue(names.size() >= 3 && text.split("<!-- picture ", -1).length - 1 == names.size(), names.toString());
        if (Boolean.getBoolean("pictures.write")) {
            Files.writeString(README, renewed);
        } else {
            assertEquals(renewed.toString(), text);
        }
    }
}
