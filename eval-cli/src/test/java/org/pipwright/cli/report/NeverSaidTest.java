package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.models.ModelCatalog;

/** What no explanation may say, over positions of all phases from games with many odd plays. */
class NeverSaidTest {
    private static final List<Pattern> NEVER = Stream.of(
                    // A roll that moves nothing, told as if it mattered.
                    "no play",
                    // Equal numbers told as a difference.
                    "\\b(\\d+|none|all|no)( \\w+)? instead of \\1\\b",
                    // Differences that are nothing when printed.
                    "(?<![\\d.])0\\.0+ (more|fewer|worse|points|pips|instead)\\b",
                    "(?<![\\d.]|and )1 (pips|checkers|points|blots|rolls|gammons|numbers|crossovers)\\b",
                    "(?<![\\d.])0 (pips|checkers|points|blots|rolls|gammons|numbers|crossovers)\\b",
                    "NaN|null|%[sd]|Infinity",
                    "  |\\.\\.|,\\.| \\.|,,|\\(\\)|\\( ")
            .map(Pattern::compile)
            .toList();

    private static final Pattern GAMMON = Pattern.compile("gammon");

    /** The one sentence that may speak of gammons where they do not count. */
    private static final Pattern COUNTS_NOTHING = Pattern.compile("a gammon counts no more than");

    /** Rolls that hit: more of them speak against a play, fewer for it. */
    private static final Pattern HITS = Pattern.compile(
            "the opponent hits with (all|\\d+)(?: of its)? 36 rolls(?: \\([^)]*\\))? instead of (all|none|\\d+)");

    private static final int SIZE = Integer.getInteger("pipwright.neversaid", 60);

    private static Knowledge knowledge;
    private static Judge judge;

    private record Turn(Position position, Roll roll) {}

    @BeforeAll
    static void open() {
        knowledge = Knowledge.of(ModelCatalog.shipped().load("fifth"));
        judge = new Judge(knowledge, 1);
    }

    @AfterAll
    static void close() {
        judge.close();
    }

    /** One turn of ten of games in which half of the plays are chosen at random, so that odd positions come up too. */
    private static List<Turn> turns(int count, long seed) {
        Random random = new Random(seed);
        List<Turn> turns = new ArrayList<>();
        Position position = Position.start();
        while (turns.size() < count) {
            Roll roll = Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6));
            List<PlayVerdict> plays = ranking(Question.of(position, roll));
            if (plays.size() > 1 && random.nextInt(10) == 0) {
                turns.add(new Turn(position, roll));
            }
            position = plays.get(random.nextInt(2) == 0 ? 0 : random.nextInt(plays.size()))
                    .play()
                    .next();
            if (position.finished()) {
                position = Position.start();
            }
        }
        return turns;
    }

    private static List<PlayVerdict> ranking(Question question) {
        return judge.ask(question, Effort.STATIC.withRaces(false)).plays();
    }

    static List<Optional<Stakes>> stakes() {
        return List.of(
                Optional.empty(),
                Optional.of(MoneyStakes.USUAL),
                Optional.of(new MatchStakes(new MatchScore(1, 1, false))),
                Optional.of(new MatchStakes(new MatchScore(2, 4, false))),
                Optional.of(new MatchStakes(new MatchScore(1, 3, true))));
    }

    @ParameterizedTest
    @MethodSource("stakes")
    void ofPlays(Optional<Stakes> stakes) {
        for (Turn turn : turns(SIZE, 11)) {
            Question asked = Question.of(turn.position(), turn.roll());
            Question question =
                    stakes.map(each -> asked.with(each, CubeState.START)).orElse(asked);
            List<PlayVerdict> plays = ranking(question);
            Explanation why = Explanation.of(
                            turn.position(), List.of(plays.get(0), plays.get(1), plays.get(plays.size() - 1)), judge, 0)
                    .under(question, knowledge.terms());
            check(turn, PlayWords.sentences(why.best()));
            for (ExplainedPlay rival : why.rivals()) {
                List<String> said = RivalWords.sentences(why.best(), rival, why.gammons());
                check(turn, said);
                if (stakes.isEmpty() || stakes.get() instanceof MoneyStakes) {
                    said.forEach(sentence -> assertFalse(sentence.contains("at this score"), sentence));
                }
                if (why.gammons().mine() == 0 && why.gammons().theirs() == 0) {
                    said.forEach(sentence -> assertTrue(
                            !GAMMON.matcher(sentence).find()
                                    || COUNTS_NOTHING.matcher(sentence).find(),
                            sentence));
                }
            }
        }
    }

    static List<Stakes> withCube() {
        return List.of(
                MoneyStakes.USUAL,
                new MoneyStakes(false, false),
                new MatchStakes(new MatchScore(2, 4, false)),
                new MatchStakes(new MatchScore(4, 2, false)),
                new MatchStakes(new MatchScore(3, 1, false)),
                new MatchStakes(new MatchScore(7, 7, false)));
    }

    @ParameterizedTest
    @MethodSource("withCube")
    void ofTheCube(Stakes played) {
        for (Turn turn : turns(SIZE, 12)) {
            Question before = Question.before(turn.position()).with(played, CubeState.START);
            Verdict verdict = judge.ask(before, Effort.STATIC.withRaces(false));
            CubeCase asked = new CubeCase(
                    turn.position(),
                    CubeState.START,
                    played,
                    verdict.cube(),
                    verdict.outcomes(),
                    verdict.basis(),
                    knowledge.terms(played),
                    judge.quickMarket(before, Effort.STATIC));
            check(turn, CubeReasons.sentences(asked, Voice.REPORT));
        }
    }

    private static void check(Turn turn, List<String> said) {
        String where = turn + ": ";
        assertEquals(said.size(), new HashSet<>(said).size(), where + said);
        for (String sentence : said) {
            assertTrue(!Character.isLowerCase(sentence.charAt(0)) && sentence.endsWith("."), where + sentence);
            for (Pattern never : NEVER) {
                Matcher found = never.matcher(sentence);
                assertTrue(!found.find(), () -> where + "'" + found.group() + "' in: " + sentence);
            }
            Matcher hits = HITS.matcher(sentence);
            if (hits.find()) {
                boolean more = rolls(hits.group(1)) > rolls(hits.group(2));
                assertEquals(!sentence.startsWith("For it: "), more, where + sentence);
            }
        }
    }

    private static int rolls(String number) {
        return number.equals("all") ? 36 : number.equals("none") ? 0 : Integer.parseInt(number);
    }

    /** The patterns find what they are for. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Against 1-1 (no play) it is 0.024 worse.",
                "It has 5 instead of 5.",
                "It has 5 checkers instead of 5.",
                "Of 100 games it loses 0.0 fewer gammons.",
                "It costs the opponent 1 pips."
            })
    void whatWasSaidOnce(String sentence) {
        assertTrue(NEVER.stream().anyMatch(never -> never.matcher(sentence).find()));
    }

    @Test
    void butNotWhatIsFine() {
        String fine = "It has 15 checkers instead of 5, wins 10.0 more games, and 1 checker is 20.05 points away.";
        assertTrue(NEVER.stream().noneMatch(never -> never.matcher(fine).find()));
    }
}
