package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** The page that checks answers, in a real browser without a network. */
class PracticePageTest {
    private static final int COUNT = 3;

    private static final Map<String, Shown> PAGES = new HashMap<>();

    @TempDir
    static Path folder;

    private static Browser browser;

    private BrowserContext context;
    private Page page;
    private final List<String> fetched = new ArrayList<>();
    private final List<String> complaints = new ArrayList<>();

    /** A page and the exercises on it. */
    private record Shown(Path file, JsonNode questions) {}

    @AfterAll
    static void stopBrowser() {
        if (browser != null) {
            browser.close();
        }
    }

    /** One browser for all; without one each test is skipped, which a test run shows. */
    @BeforeEach
    void openContext() {
        browser = browser == null ? Browser.start() : browser;
        open(new com.microsoft.playwright.Browser.NewContextOptions());
    }

    private void open(com.microsoft.playwright.Browser.NewContextOptions options) {
        context = browser.chromium().newContext(options.setOffline(true));
        page = context.newPage();
        page.onRequest(request -> fetched.add(request.url()));
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
    }

    /** Nothing is fetched but the file itself, and the browser has nothing to complain about. */
    @AfterEach
    void closeContext() {
        if (context == null) {
            return;
        }
        context.close();
        assertEquals(1, fetched.size(), fetched::toString);
        assertEquals(List.of(), complaints);
    }

    /** Opens the page of a theme and gives the exercises as programs see them. */
    private JsonNode show(String theme) {
        Shown shown = PAGES.computeIfAbsent(theme, PracticePageTest::make);
        page.navigate(shown.file().toUri().toString());
        return shown.questions();
    }

    private static Shown make(String theme) {
        Path file = folder.resolve(theme + ".html");
        Run run = Run.of(
                "drill",
                theme,
                "--count",
                String.valueOf(COUNT),
                "--lookahead",
                "0",
                "--net",
                "fifth",
                "--json",
                "--page",
                file.toString());
        assertEquals(0, run.code(), run.err());
        try {
            return new Shown(file, new ObjectMapper().readTree(run.out()).get("questions"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Locator section(int number) {
        return page.locator("#q" + number);
    }

    private Locator feedback(int number) {
        return section(number).getByRole(AriaRole.STATUS);
    }

    private String tally() {
        return page.locator("#tally").textContent();
    }

    private String answer(int number, String play) {
        Locator input = section(number).getByRole(AriaRole.TEXTBOX);
        input.fill(play);
        input.press("Enter");
        return feedback(number).textContent();
    }

    private static String cost(JsonNode play) {
        return String.format(
                Locale.ROOT, " gives away %.4f points", 0 - play.get("cost").asDouble());
    }

    @Test
    void aRightAnswerIsToldAndCounted() {
        JsonNode questions = show("hitting");
        assertEquals("0 of 3 solved, 0 at the first try.", tally());
        JsonNode plays = questions.get(0).get("plays");
        String best = plays.get(0).get("playText").asText();
        String told = answer(1, best);
        assertTrue(told.startsWith("Right: " + best + ". The next best, "), told);
        assertTrue(told.contains(plays.get(1).get("playText").asText() + "," + cost(plays.get(1))), told);
        assertEquals("1 of 3 solved, 1 at the first try.", tally());
        assertTrue(section(1).getByRole(AriaRole.TABLE).isVisible(), "the answer unfolds");
    }

    @Test
    void aWrongAnswerIsPricedAndMayBeTriedAgain() {
        JsonNode plays = show("hitting").get(1).get("plays");
        JsonNode worst = plays.get(plays.size() - 1);
        String told = answer(2, worst.get("playText").asText());
        assertEquals(
                worst.get("playText").asText() + cost(worst) + ": "
                        + worst.get("grade").asText() + ". Try again, or unfold the answer.",
                told);
        assertFalse(section(2).getByRole(AriaRole.TABLE).isVisible());
        answer(2, plays.get(0).get("playText").asText());
        assertEquals("1 of 3 solved, 0 at the first try.", tally());
    }

    @Test
    void anAnswerThatWasLookedUpDoesNotCount() {
        JsonNode plays = show("hitting").get(0).get("plays");
        section(1).getByText("Answer 1").click();
        assertTrue(answer(1, plays.get(0).get("playText").asText()).startsWith("Right: "));
        assertEquals("0 of 3 solved, 0 at the first try.", tally());
    }

    @Test
    void whatIsNoPlayIsExplainedAndNotHeldAgainstAnyone() {
        JsonNode plays = show("hitting").get(0).get("plays");
        for (String text : List.of("", "8", "8/9", "30/5", "x/5", "24/3", "8/5(9)", "8/5/5")) {
            assertFalse(answer(1, text).isEmpty());
            assertEquals("feedback unclear", feedback(1).getAttribute("class"));
        }
        answer(1, plays.get(0).get("playText").asText());
        assertEquals("1 of 3 solved, 1 at the first try.", tally());
    }

    /** Every legal play in many spellings, and moves drawn at random: the page reads them as the engine does. */
    @ParameterizedTest
    @ValueSource(strings = {"hitting", "opening", "bearing-off"})
    void playsAreReadAsTheEngineReadsThem(String theme) {
        JsonNode questions = show(theme);
        SplittableRandom random = new SplittableRandom(4);
        int legal = 0;
        int refused = 0;
        for (int q = 0; q < questions.size(); q++) {
            Position position =
                    PositionText.parse(questions.get(q).get("positionText").asText());
            Roll roll = Roll.parse(questions.get(q).get("roll").asText());
            List<String> texts = new ArrayList<>();
            Plays.legal(position, roll).forEach(play -> texts.addAll(spellings(play)));
            for (int i = 0; i < 60; i++) {
                texts.add(randomMoves(random));
            }
            List<String> told = understood(q + 1, texts);
            for (int i = 0; i < texts.size(); i++) {
                String text = texts.get(i);
                String expected = read(text, position, roll);
                assertEquals(expected, told.get(i), () -> position + " " + roll + ": " + text);
                legal += expected.isEmpty() ? 0 : 1;
                refused += expected.isEmpty() ? 1 : 0;
            }
        }
        assertTrue(legal > 30 && refused > 30, legal + " legal and " + refused + " refused texts");
    }

    private static List<String> spellings(Play play) {
        String text = play.toString();
        List<String> steps = new ArrayList<>();
        for (Step step : play.steps()) {
            steps.add(place(step.from()) + "/" + place(step.to()) + (step.hit() ? "*" : ""));
        }
        List<String> reversed = new ArrayList<>(List.of(text.split(" ")));
        java.util.Collections.reverse(reversed);
        return List.of(
                text,
                text.replace("*", ""),
                String.join(", ", reversed),
                String.join(" ", steps),
                " " + text.replace("bar", "25").replace("off", "0").replace("/", " / "),
                text.toUpperCase(Locale.ROOT).replace("(", " ("));
    }

    private static String place(int place) {
        return place == 25 ? "bar" : place == 0 ? "off" : String.valueOf(place);
    }

    private static String randomMoves(SplittableRandom random) {
        List<String> moves = new ArrayList<>();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            int from = random.nextInt(2, 26);
            int to = Math.max(0, from - random.nextInt(1, 8));
            moves.add(place(from) + "/" + place(to) + (random.nextInt(5) == 0 ? "*" : ""));
        }
        return String.join(" ", moves);
    }

    private static String read(String text, Position position, Roll roll) {
        try {
            return PlayText.parse(text, position, roll).toString();
        } catch (IllegalPlayException e) {
            return "";
        }
    }

    /** The plays that the page takes texts for; empty where for none. */
    private List<String> understood(int number, List<String> texts) {
        List<?> told = (List<?>) section(number)
                .evaluate(
                        "(section, texts) => texts.map((text) => {"
                                + " section.querySelector('input').value = text;"
                                + " section.querySelector('form').requestSubmit();"
                                + " const feedback = section.querySelector('.feedback');"
                                + " return feedback.className.endsWith('unclear') ? '' : feedback.textContent; })",
                        texts);
        return told.stream()
                .map(each -> each.toString()
                        .replaceFirst("^Right: (.*)\\. The next best.*", "$1")
                        .replaceFirst(" gives away.*", ""))
                .collect(Collectors.toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"takes-and-passes", "race-doubles", "match-scores"})
    void decisionsOfTheCubeArePressed(String theme) {
        JsonNode questions = show(theme);
        for (int q = 0; q < COUNT; q++) {
            String best = questions.get(q).get("best").asText();
            List<String> buttons = section(q + 1).getByRole(AriaRole.BUTTON).allTextContents();
            assertEquals(2, buttons.size());
            String right = named(buttons, best);
            String wrong = buttons.get(1 - buttons.indexOf(right));
            press(q + 1, wrong);
            String answer = feedback(q + 1).textContent();
            assertTrue(answer.matches(wrong + " gives away [0-9]+\\.[0-9]+ .*"), answer);
            press(q + 1, right);
            assertTrue(feedback(q + 1).textContent().startsWith("Right: " + right + ". "));
        }
        assertEquals("3 of 3 solved, 0 at the first try. That was the last one.", tally());
    }

    private static String named(List<String> buttons, String action) {
        return buttons.stream()
                .filter(button -> button.toLowerCase(Locale.ROOT).endsWith(action))
                .findFirst()
                .orElseThrow();
    }

    private void press(int number, String button) {
        section(number)
                .getByRole(
                        AriaRole.BUTTON,
                        new Locator.GetByRoleOptions().setName(button).setExact(true))
                .press("Enter");
    }

    private String focused() {
        return (String) page.evaluate("() => { const e = document.activeElement;"
                + " return e.tagName.toLowerCase() + ' ' + (e.id || e.textContent.trim()); }");
    }

    /** Nobody needs a mouse: the order of the focus is that of the reading, and the link to the next one moves it there. */
    @Test
    void theKeyboardIsEnough() {
        JsonNode questions = show("hitting");
        List<String> order = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            page.keyboard().press("Tab");
            order.add(focused());
        }
        assertEquals(
                List.of(
                        "summary Board 1 in words",
                        "input a1",
                        "button Check",
                        "summary Answer 1",
                        "a Next position",
                        "summary Board 2 in words",
                        "input a2",
                        "button Check",
                        "summary Answer 2",
                        "a Next position"),
                order);
        page.keyboard().press("Enter");
        assertEquals("h2 h3", focused());
        page.keyboard().press("Tab");
        page.keyboard().press("Tab");
        page.keyboard().type(questions.get(2).get("best").asText());
        page.keyboard().press("Enter");
        assertTrue(feedback(3).textContent().startsWith("Right: "));
    }

    /** What assistive technology gets to know, and the usual rules about it. */
    @ParameterizedTest
    @ValueSource(strings = {"hitting", "takes-and-passes"})
    void screenReadersAreServed(String theme) {
        JsonNode questions = show(theme);
        for (int n = 1; n <= COUNT; n++) {
            assertTrue(section(n)
                    .getByRole(AriaRole.HEADING, new Locator.GetByRoleOptions().setName("Position " + n + " of 3"))
                    .isVisible());
            String words =
                    section(n).getByRole(AriaRole.IMG).first().locator("title").textContent();
            assertTrue(words.startsWith("You have ") && words.contains("; your opponent has "), words);
            section(n).locator(".words summary").click();
            assertEquals(words, section(n).locator(".words p").textContent());
        }
        if (theme.equals("hitting")) {
            assertTrue(page.getByLabel("Your play of "
                                    + questions.get(0).get("roll").asText())
                            .count()
                    > 0);
        }
        page.locator("details").evaluateAll("all => all.forEach(each => { each.open = true; })");
        Browser.requireAccessible(page);
    }

    @Test
    void withoutScriptsTheAnswersAreThere() throws IOException {
        context.close();
        open(new com.microsoft.playwright.Browser.NewContextOptions().setJavaScriptEnabled(false));
        JsonNode questions = show("hitting");
        assertTrue(page.getByText("Think of your answer").isVisible());
        assertEquals(0, page.getByRole(AriaRole.TEXTBOX).count());
        Locator best = section(1).locator(".best");
        assertFalse(best.isVisible());
        section(1).getByText("Answer 1").click();
        assertTrue(best.isVisible());
        assertEquals(questions.get(0).get("best").asText(), best.textContent());
    }

    @ParameterizedTest
    @ValueSource(ints = {320, 1280})
    void nothingSticksOutOnAnyScreen(int width) {
        page.setViewportSize(width, 700);
        show("hitting");
        page.locator("details").evaluateAll("all => all.forEach(each => { each.open = true; })");
        Object wide = page.evaluate("() => document.documentElement.scrollWidth");
        assertTrue(((Number) wide).intValue() <= width, "the page is " + wide + " wide");
        assertNotEquals("", tally());
    }
}
