package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/** Exercises at the desk, in a real browser. */
class DeskPracticeTest {
    private static final Knowledge KNOWLEDGE = Knowledge.of(TestNet.MODEL);

    /** Few legal plays each, so that looking ahead is quick. */
    private static final List<Question> QUESTIONS = List.of(
            Question.of(PositionText.parse("1@2 1@5 / 3@1"), Roll.of(2, 1)),
            Question.of(PositionText.parse("2@2 1@5 / 1@1"), Roll.of(4, 1)),
            Question.before(PositionText.parse("2@1 / 2@1")).forMoney());

    @TempDir
    Path folder;

    private static Browser browser;

    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void start() {
        browser = Browser.start();
    }

    @AfterAll
    static void stop() {
        if (browser != null) {
            browser.close();
        }
    }

    private DeskServer desk() {
        List<Candidate> candidates = QUESTIONS.stream()
                .map(question -> Candidate.asked(new Origin.Listed("mine.txt", 1), question))
                .toList();
        return TestDesk.open(folder, name -> KNOWLEDGE, Map.of(), Map.of("mine <2>.txt", candidates));
    }

    private Page open(DeskServer server) {
        BrowserContext context = browser.chromium()
                .newContext(new NewContextOptions().setViewportSize(390, 800).setColorScheme(ColorScheme.DARK));
        Page page = context.newPage();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        page.navigate(server.address());
        page.getByText("Exercises, one at a time").click();
        return page;
    }

    private static String play(Question question, boolean best) {
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            Verdict verdict = judge.ask(question, Effort.lookahead(2).withRaces(true));
            int last = verdict.plays().size() - 1;
            return verdict.plays().get(best ? 0 : last).play().toString();
        }
    }

    private static void answer(Page page, String play) {
        page.waitForSelector("#answer");
        page.fill("#answer", play);
        page.keyboard().press("Enter");
        page.waitForSelector(".feedback");
    }

    /** One wrong, two right; the wrong one comes again, and what is wrong at the end comes the next time. */
    @Test
    void whatIsWrongComesAgain() throws IOException {
        try (DeskServer server = desk()) {
            Page page = open(server);
            Browser.requireAccessible(page);
            page.getByText("The positions of mine <2>.txt").click();
            page.getByText("Begin").click();
            page.waitForSelector("#answer");
            page.fill("#answer", "24/1");
            page.keyboard().press("Enter");
            page.waitForFunction("() => document.getElementById('wrong').textContent !== ''");
            answer(page, play(QUESTIONS.get(0), false));
            assertEquals("0 right, 1 wrong, 1 to be asked again", page.textContent(".tally"));
            assertTrue(page.textContent("#said").endsWith("It will be asked again."), page.textContent("#said"));
            Browser.requireAccessible(page);
            page.keyboard().press("n");
            page.waitForFunction("() => document.querySelector('#practice h2').textContent.startsWith('Position 2')");
            answer(page, play(QUESTIONS.get(1), true));
            assertEquals("1 right, 1 wrong, 1 to be asked again", page.textContent(".tally"));
            page.keyboard().press("n");
            page.waitForSelector("button[name=answer]");
            page.locator("button[name=answer]").first().click();
            page.waitForSelector(".feedback");
            boolean third = page.locator(".feedback.good").count() > 0;
            page.keyboard().press("n");
            page.waitForFunction("() => document.querySelector('#practice h2 small')?.textContent === 'asked again'");
            answer(page, play(QUESTIONS.get(0), false));
            int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
            assertTrue(wide <= 390, "the page is " + wide + " wide");
            List<String> log = Files.readAllLines(folder.resolve("practice.log"));
            assertEquals(4, log.size(), log.toString());
            assertTrue(log.get(0).contains("\twrong\t/board?position=1@2+1@5+/+3@1&roll=2-1"), log.get(0));
            assertTrue(log.get(1).contains("\tright\t"), log.get(1));
            page.click("header a");
            String wrong = "What went wrong last time: " + (third ? "1 position" : "2 positions");
            assertEquals(
                    1,
                    page.getByText(wrong, new Page.GetByTextOptions().setExact(true))
                            .count());
            assertEquals(List.of(), complaints);
        }
    }

    /** The costly mistakes of one player in a record that was opened, once it has been reviewed, and of nobody else. */
    @Test
    void mistakesInARecordArePractised() throws IOException {
        Knowledge knowledge = Knowledge.of(ModelCatalog.shipped().load("fifth"));
        DeskSetup setup = new DeskSetup(
                0,
                List.of("fifth"),
                name -> knowledge,
                folder,
                1,
                Map.of("evening.txt", RecordText.parse(RecordPageTest.TEXT)),
                Map.of(),
                folder.resolve("practice.log"),
                Optional.empty());
        try (DeskServer server = new DeskServer(setup).awaitNet()) {
            Page page = open(server);
            page.getByText("Mistakes of Ben in evening.txt").click();
            page.getByText("Begin").click();
            assertTrue(page.textContent("h1").startsWith("Mistakes of Ben"), page.textContent("h1"));
            page.waitForSelector("#answer, button[name=answer]");
            if (page.locator("#answer").count() > 0) {
                answer(page, page.locator("#plays option").first().getAttribute("value"));
            } else {
                page.locator("button[name=answer]").first().click();
                page.waitForSelector(".feedback");
            }
            String noted = Files.readString(folder.resolve("practice.log"));
            assertTrue(noted.contains("/board"), noted);
            assertTrue(List.of("3-1", "4-4", "5-3").stream().noneMatch(ada -> noted.contains("roll=" + ada)), noted);
            assertTrue(
                    List.of("roll=6-2", "roll=6-4").stream().anyMatch(noted::contains) || !noted.contains("roll="),
                    noted);
            assertEquals(List.of(), complaints);
        }
    }

    /** A theme has a page of its own at once, whose exercise is looked for beside it. */
    @Test
    void aThemeIsLookedFor() {
        try (DeskServer server = desk()) {
            Page page = open(server);
            page.locator("[value=theme-bearing-off]").check();
            page.getByText("Begin").click();
            page.waitForURL("**/practice/1");
            assertTrue(page.textContent("h1").startsWith("Bearing off: "), page.textContent("h1"));
            assertEquals(List.of(), complaints);
        }
    }
}
