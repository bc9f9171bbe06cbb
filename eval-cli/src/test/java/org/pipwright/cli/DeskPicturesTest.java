package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/**
 * The pictures in docs/desk.md. They are made anew with {@code -Dpipwright.test.pictures=write}; otherwise it is made sure
 * that the pages still show what the pictures are there for.
 */
class DeskPicturesTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 900;

    @TempDir
    Path folder;

    @Test
    void pagesShowWhatTheDocumentSays() throws IOException {
        Knowledge knowledge = Knowledge.of(ModelCatalog.shipped().load("fifth"));
        try (Browser browser = Browser.start();
                DeskServer server = new DeskServer(setup(knowledge)).awaitNet();
                BrowserContext context =
                        browser.chromium().newContext(new NewContextOptions().setViewportSize(WIDTH, HEIGHT))) {
            Page page = context.newPage();
            page.navigate(server.address());
            String base = server.address().substring(0, server.address().indexOf("/?"));
            page.navigate(base + "/board?ahead=0&pick=6&position=4@6+1@5+3@8+5@13+2@24+/+5@6+3@8+5@13+2@24");
            page.waitForSelector("#at-6[aria-current]");
            picture(page, "set-up.png");
            page.navigate(base + "/board?roll=6-2&play=24/18+13/11&ahead=0");
            page.waitForSelector(".play-shown .rolls tbody tr:nth-child(21)");
            picture(page, "ask.png");
            page.navigate(base + "/class?roll=6-2&ahead=0&guesses=5: 24/18 13/11; 3: 24/16; 1: 13/5&answer=shown");
            page.waitForSelector(".hands td.fine");
            picture(page, "class.png");
            page.navigate(base + "/records/1?at=g1t8");
            page.waitForFunction("() => document.querySelector('#stream').children.length === 0");
            page.waitForSelector("#turn h2 .grade:not(.fine)");
            picture(page, "record.png");
            page.navigate(base + "/practice");
            page.locator("[value=positions-1]").check();
            page.getByText("Begin").click();
            page.waitForSelector("#answer");
            page.fill("#answer", "24/20 13/11");
            page.keyboard().press("Enter");
            page.waitForSelector(".feedback.bad");
            picture(page, "practise.png");
        }
        String document = Files.readString(DOCS.resolve("desk.md"));
        for (String name : List.of("set-up.png", "ask.png", "class.png", "record.png", "practise.png")) {
            assertTrue(document.contains("](desk/" + name + ")"), name);
            BufferedImage image =
                    ImageIO.read(DOCS.resolve("desk").resolve(name).toFile());
            assertEquals(WIDTH, image.getWidth(), name);
        }
    }

    private DeskSetup setup(Knowledge knowledge) throws IOException {
        String name = "evening.txt";
        Candidate asked =
                Candidate.asked(new Origin.Listed("lesson4.txt", 1), Question.of(Position.start(), Roll.of(4, 2)));
        GameRecord record = RecordText.parse(Files.readString(Path.of("src", "docs", name)));
        return new DeskSetup(
                0,
                List.of("fifth"),
                net -> knowledge,
                folder,
                2,
                Map.of(name, record),
                Map.of("lesson4.txt", List.of(asked)),
                folder.resolve("practice.log"),
                Optional.empty());
    }

    private static void picture(Page page, String name) {
        if ("write".equals(System.getProperty("pipwright.test.pictures"))) {
            page.screenshot(
                    new Page.ScreenshotOptions().setPath(DOCS.resolve("desk").resolve(name)));
        }
    }
}
