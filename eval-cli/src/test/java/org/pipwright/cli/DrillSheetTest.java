package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sheet for print: questions first, answers on other pages. */
class DrillSheetTest {
    @TempDir
    Path folder;

    private Run sheet(String theme, int count) {
        return Run.of(
                "drill",
                theme,
                "--count",
                String.valueOf(count),
                "--lookahead",
                "0",
                "--net",
                "fifth",
                "--json",
                "--sheet",
                file().toString());
    }

    private Path file() {
        return folder.resolve("sheet.html");
    }

    private static List<String> texts(Page page, String selector) {
        return page.locator(selector).allTextContents();
    }

    @Test
    void theFileNeedsNothingElseAndIsTheSameEachTime() throws IOException {
        Run run = sheet("hitting", 2);
        // A busy machine may have had time for a line of progress before.
        assertTrue(run.err().endsWith("wrote " + file() + "\n"), run.err());
        String html = Files.readString(file());
        String links = html.replace("http://www.w3.org/2000/svg", "").replace("http-equiv", "");
        assertFalse(Pattern.compile("(?i)http|<script|<link|@import|url\\(|src=")
                .matcher(links)
                .find());
        sheet("hitting", 2);
        assertEquals(html, Files.readString(file()));
    }

    @ParameterizedTest
    @CsvSource({"hitting, 6, 1", "takes-and-passes, 7, 2"})
    void questionsAndAnswersAreOnSeparatePages(String theme, int count, int questionPages) throws IOException {
        Run run = sheet(theme, count);
        JsonNode questions = new ObjectMapper().readTree(run.out()).get("questions");
        try (Browser browser = Browser.start()) {
            Page page = browser.chromium().newPage();
            page.navigate(file().toUri().toString());
            assertEquals(count, texts(page, ".questions article").size());
            assertEquals(0, page.locator(".questions .best").count());
            List<String> answers = texts(page, ".answers .best");
            assertEquals(count, answers.size());
            for (int i = 0; i < count; i++) {
                String best = questions.get(i).get("best").asText();
                assertTrue(answers.get(i).toLowerCase(java.util.Locale.ROOT).endsWith(best), answers.get(i));
            }
            String pdf =
                    new String(page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true)), StandardCharsets.ISO_8859_1);
            int printed = pdf.split("/Type /Page\\b(?!s)", -1).length - 1;
            assertEquals(questionPages + 1, page.locator(".page").count());
            assertTrue(printed > questionPages && printed <= questionPages + (count + 1) / 2, printed + " pages");
            assertEquals(3 * count, texts(page, ".answers .said").size());
        }
    }
}
