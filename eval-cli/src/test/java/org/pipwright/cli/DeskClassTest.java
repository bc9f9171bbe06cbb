package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.judge.Knowledge;

/** A class with tablets of its own, in a real browser. */
class DeskClassTest {
    @TempDir
    Path folder;

    private final List<String> complaints = new ArrayList<>();

    private Page open(Browser browser, int width, int height, ColorScheme colours) {
        BrowserContext context = browser.chromium()
                .newContext(new NewContextOptions()
                        .setViewportSize(width, height)
                        .setHasTouch(true)
                        .setColorScheme(colours));
        Page page = context.newPage();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        return page;
    }

    private static void fits(Page page, int width) {
        int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
        assertTrue(wide <= width, "the page is " + wide + " wide");
        Browser.requireAccessible(page);
    }

    @Test
    void tabletsLookAndGuess() {
        DeskSetup setup = new DeskSetup(
                0,
                List.of("tiny"),
                name -> Knowledge.of(TestNet.MODEL),
                folder,
                1,
                Map.of(),
                Map.of(),
                folder.resolve("practice.log"),
                Optional.of(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0)));
        try (Browser browser = Browser.start();
                DeskServer server = new DeskServer(setup).awaitNet()) {
            Page teacher = open(browser, 1280, 900, ColorScheme.LIGHT);
            teacher.navigate(server.address());
            String code = teacher.textContent("#tablets .code");
            Browser.requireAccessible(teacher);
            String base = server.address().substring(0, server.address().indexOf("/?"));

            Page guest = open(browser, 390, 800, ColorScheme.DARK);
            guest.navigate(teacher.textContent("#tablets .copied"));
            fits(guest, 390);
            guest.fill("#code", "wrong");
            guest.keyboard().press("Enter");
            guest.waitForSelector("#refused");
            assertTrue(complaints.remove(0).contains("403"), "the browser takes note of the refusal");
            guest.fill("#code", code.toLowerCase(Locale.ROOT));
            guest.keyboard().press("Enter");
            guest.waitForSelector("#room");

            teacher.navigate(base + "/class?roll=3-1&ahead=0");
            guest.waitForSelector("#room svg");
            assertEquals(
                    "You have rolled 3-1. Which play?",
                    guest.textContent("#said").strip(),
                    "told once");
            fits(guest, 390);
            guest.fill("#guess", "8/5 6/5");
            guest.keyboard().press("Enter");
            guest.waitForSelector("#room strong");
            teacher.waitForFunction(
                    "() => document.getElementById('tablets').textContent.endsWith('1 tablet is here, 1 has guessed.')");
            teacher.getByText("Uncover the answer").click();
            teacher.waitForSelector("#answer .plays");
            guest.waitForSelector("#room .plays");
            String said = guest.textContent("#said");
            assertTrue(said.endsWith("The answer is uncovered. You guessed 8/5 6/5."), said);
            fits(guest, 390);
            fits(teacher, 1280);

            teacher.navigate(base + "/");
            teacher.getByText("Another code, and everybody out").click();
            guest.waitForSelector("#code");
            assertTrue(complaints.remove(0).contains("401"), "the guest's page was told");
            assertEquals(List.of(), complaints);
        }
    }
}
