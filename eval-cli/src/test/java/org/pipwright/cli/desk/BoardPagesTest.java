package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.RandomModel;
import org.pipwright.engine.roll.Roll;

/** A page that is asked for again is made once, until it would say more. */
class BoardPagesTest {
    private static final Setting OPENING = Setting.START.with(Optional.of(Roll.of(3, 1)));

    private final Judges judges = new Judges(name -> Knowledge.of(RandomModel.of(5)), 1);
    private final Opinions opinions = new Opinions(judges, "any");
    private final BoardPages pages = new BoardPages(opinions);
    private final AtomicInteger made = new AtomicInteger();

    @AfterEach
    void close() {
        judges.close();
    }

    private String page(String query, Setting setting) {
        return pages.of(query, setting, () -> "page " + made.incrementAndGet());
    }

    private void answer(int lookahead) {
        opinions.at(OPENING.question().orElseThrow(), lookahead, () -> false);
    }

    @Test
    void theSameAddressGivesTheSamePage() {
        answer(0);
        assertEquals("page 1", page("roll=3-1", OPENING));
        assertEquals("page 1", page("roll=3-1", OPENING));
        assertEquals("page 2", page("roll=3-1&home=left", OPENING.homeLeft(true)));
        assertEquals("page 1", page("roll=3-1", OPENING));
    }

    @Test
    void whatManyAskAtOnceIsAnsweredAndMadeOnce() throws Exception {
        Question question = OPENING.question().orElseThrow();
        Set<Verdict> verdicts = atOnce(() -> opinions.at(question, 1, () -> false));
        assertEquals(1, verdicts.size());
        Setting deep =
                SettingForm.parse(Map.of("roll", "3-1", "ahead", "1")::get).setting();
        Set<String> shown = atOnce(() -> page("roll=3-1&ahead=1", deep));
        assertEquals(Set.of("page 1"), shown);
    }

    /** What several threads get that ask at the same time, told apart as objects. */
    private static <T> Set<T> atOnce(Callable<T> ask) throws Exception {
        int threads = 6;
        CyclicBarrier start = new CyclicBarrier(threads);
        ExecutorService askers = Executors.newFixedThreadPool(threads);
        Set<T> got = Collections.newSetFromMap(new IdentityHashMap<>());
        try {
            Callable<T> one = () -> {
                start.await();
                return ask.call();
            };
            for (Future<T> answer : askers.invokeAll(Collections.nCopies(threads, one))) {
                got.add(answer.get());
            }
        } finally {
            askers.shutdownNow();
        }
        return got;
    }

    @Test
    void aPageIsMadeAnewOnceADeeperAnswerIsKnown() {
        answer(0);
        assertEquals("page 1", page("roll=3-1", OPENING));
        answer(1);
        assertEquals("page 2", page("roll=3-1", OPENING));
        assertEquals("page 2", page("roll=3-1", OPENING));
    }

    @Test
    void aPageWithoutAnAnswerIsNotKept() {
        assertEquals("page 1", page("roll=3-1", OPENING));
        assertEquals("page 2", page("roll=3-1", OPENING));
    }

    @Test
    void aPageAboutAPlayIsNotKept() {
        Setting chosen =
                SettingForm.parse(Map.of("roll", "3-1", "play", "8/5 6/5")::get).setting();
        answer(0);
        assertEquals("page 1", page("roll=3-1&play=8/5+6/5", chosen));
        assertEquals("page 2", page("roll=3-1&play=8/5+6/5", chosen));
    }

    @Test
    void longAddressesAndOldPagesAreNotKept() {
        answer(0);
        String noise = "roll=3-1&x=" + "0".repeat(500);
        assertEquals("page 1", page(noise, OPENING));
        assertEquals("page 2", page(noise, OPENING));
        for (int other = 0; other < 100; other++) {
            page("roll=3-1&x=" + other, OPENING);
        }
        made.set(0);
        assertEquals("page 1", page("roll=3-1&x=0", OPENING));
        assertEquals("page 1", page("roll=3-1&x=0", OPENING));
    }
}
