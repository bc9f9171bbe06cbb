package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.Source;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.models.ModelCatalog;

class CubeReasonsTest {
    private static final Knowledge KNOWLEDGE =
            Knowledge.of(ModelCatalog.shipped().load("fifth"));

    private static CubeCase asked(Position position, Stakes stakes, CubeState cube, Outcomes chances) {
        CubeTerms terms = KNOWLEDGE.terms(stakes);
        return new CubeCase(
                position,
                cube,
                stakes,
                terms.values(position, chances, cube),
                chances,
                Basis.ESTIMATED,
                terms,
                Optional.empty());
    }

    /** For money a taker risks 1 more to win 3: 25 %. If half of what it loses are gammons, 2 more to win 3: 40 %. */
    @Test
    void deadTakePointsByArithmetic() {
        Position start = PositionText.parse("start");
        Stakes money = MoneyStakes.USUAL;
        Outcomes plain = new Outcomes(0.7, 0, 0, 0.3, 0, 0);
        Outcomes gammons = new Outcomes(0.35, 0.35, 0, 0.3, 0, 0);
        assertEquals(
                0.25,
                asked(start, money, CubeState.START, plain).deadTakePoint().orElseThrow(),
                1e-12);
        assertEquals(
                0.4,
                asked(start, money, CubeState.START, gammons).deadTakePoint().orElseThrow(),
                1e-6);
    }

    /** Over random boards, chances, scores and cubes: sentences are whole, none is said twice, and the first decides. */
    @Test
    void sentencesAreWholeAndTheFirstDecides() {
        SplittableRandom random = new SplittableRandom(29);
        Set<String> firsts = new HashSet<>();
        for (int n = 0; n < 400; n++) {
            Source source = Source.values()[n % Source.values().length];
            Position position = Position.ofPlanes(source.sample(random).toPlanes(), 0);
            if (position.checkers() != 15) {
                continue;
            }
            CubeCase asked = asked(position, stakes(random), CubeState.START, chances(random, position));
            if (n % 3 == 0) {
                asked = asked(position, asked.stakes(), new CubeState(2, CubeOwner.ME), asked.chances());
            }
            List<String> said = CubeReasons.sentences(asked, Voice.REPORT);
            String all = String.join("\n", said);
            assertEquals(new HashSet<>(said).size(), said.size(), all);
            for (String each : said) {
                assertTrue(Character.isUpperCase(each.charAt(0)) || Character.isDigit(each.charAt(0)), each);
                assertTrue(each.endsWith(".") && !each.contains("NaN") && !each.contains("  "), each);
                assertTrue(!each.contains("..") && !each.contains("Optional") && !each.contains(" 1 pips"), each);
            }
            boolean pass = asked.values().shouldDouble()
                    && asked.values().doubleTake() > asked.values().doublePass();
            if (asked.values().mayDouble() && !asked.winsAnyway()) {
                assertEquals(pass, said.get(0).endsWith("and pass."), asked + "\n" + all);
                assertEquals(asked.values().tooGood(), said.get(0).contains("too good"), all);
            }
            firsts.add(said.get(0).replaceAll("[+-]?\\d+(\\.\\d+)?", "#"));
        }
        assertTrue(firsts.size() >= 10, firsts.toString());
    }

    private static Stakes stakes(SplittableRandom random) {
        if (random.nextInt(3) == 0) {
            return new MoneyStakes(random.nextBoolean(), random.nextBoolean());
        }
        return new MatchStakes(new MatchScore(random.nextInt(1, 8), random.nextInt(1, 8), false));
    }

    private static Outcomes chances(SplittableRandom random, Position position) {
        double win = random.nextDouble();
        boolean gammons = position.contact();
        double won = gammons ? win * random.nextDouble() : 0;
        double lost = gammons ? (1 - win) * random.nextDouble() : 0;
        return new Outcomes(win - won, won, 0, 1 - win - lost, lost, 0);
    }
}
