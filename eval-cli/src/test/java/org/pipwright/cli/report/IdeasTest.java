package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.models.ModelCatalog;

/**
 * Explanations of positions of our own lead with what a player wrote down before they were read; the file's head says its
 * form. Not all do, and the ideas are not changed after the fact: the share may not fall.
 */
class IdeasTest {
    /** Of all the pairs; measured when this was written. */
    private static final double SHARE = 0.85;

    private static final int IDEAS = 60;

    /** A pair of plays and what should be said of it first. */
    private record Idea(
            String line, Position position, Roll roll, String score, Play best, Play rival, Set<Motive> ideas) {
        static Idea of(String line) {
            String[] parts = line.split("\\|");
            Position position = PositionText.parse(parts[1].strip());
            Roll roll = Roll.parse(parts[2].strip());
            Set<Motive> ideas = Arrays.stream(parts[6].strip().split(" "))
                    .map(Motive::valueOf)
                    .collect(Collectors.toSet());
            return new Idea(
                    line,
                    position,
                    roll,
                    parts[3].strip(),
                    PlayText.parse(parts[4].strip(), position, roll),
                    PlayText.parse(parts[5].strip(), position, roll),
                    ideas);
        }

        Question question() {
            Question asked = Question.of(position, roll).only(List.of(best, rival));
            if (score.isEmpty()) {
                return asked;
            }
            String[] parts = score.split(",");
            MatchScore match = new MatchScore(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), parts.length > 2);
            return asked.with(new MatchStakes(match), CubeState.START);
        }
    }

    private static List<Idea> ideas() throws IOException {
        String text = new String(
                IdeasTest.class
                        .getResourceAsStream("/org/pipwright/cli/ideas.txt")
                        .readAllBytes(),
                StandardCharsets.US_ASCII);
        return text.lines().filter(line -> !line.startsWith("#")).map(Idea::of).collect(Collectors.toList());
    }

    @Test
    void everyPhaseHasItsPositions() throws IOException {
        List<Idea> ideas = ideas();
        assertTrue(ideas.size() >= IDEAS);
        Set<Motive> all = new HashSet<>();
        ideas.forEach(idea -> all.addAll(idea.ideas()));
        assertTrue(all.size() >= 14, all.toString());
    }

    @Test
    void explanationsLeadWithTheIdea() throws IOException {
        Knowledge knowledge = Knowledge.of(ModelCatalog.shipped().load("standard"));
        List<String> others = new ArrayList<>();
        List<Idea> ideas = ideas();
        int asMeant = 0;
        try (Judge judge = new Judge(knowledge, 1)) {
            for (Idea idea : ideas) {
                Explanation explanation = explanation(idea, judge, knowledge);
                List<Motive> leads = RivalWords.leads(
                        explanation.best(), explanation.rivals().get(0), explanation.gammons());
                boolean meant = leads.stream().anyMatch(idea.ideas()::contains);
                asMeant += meant ? 1 : 0;
                String said = String.join(
                        " ",
                        RivalWords.sentences(
                                explanation.best(), explanation.rivals().get(0), explanation.gammons()));
                others.add((meant ? "+ " : "- ") + idea.line() + " | " + leads + " | " + said);
                neverSaid(said);
            }
        }
        String all = String.join("\n", others);
        if (System.getProperty("pipwright.ideas") != null) {
            System.out.println(all);
        }
        assertTrue(asMeant >= SHARE * ideas.size(), asMeant + " of " + ideas.size() + "\n" + all);
    }

    private static Explanation explanation(Idea idea, Judge judge, Knowledge knowledge) {
        Question question = idea.question();
        List<PlayVerdict> plays = judge.ask(question, Effort.lookahead(1)).plays();
        assertEquals(2, plays.size());
        // Which is better is the player's word: a net may err, and what is tested is what is said of it.
        PlayVerdict best = plays.stream()
                .filter(each -> each.play().result().equals(idea.best().result()))
                .findFirst()
                .orElseThrow();
        PlayVerdict rival = plays.get(best == plays.get(0) ? 1 : 0);
        Explanation explanation = Explanation.of(idea.position(), List.of(best, rival), judge, 0);
        return question.cubeful()
                ? explanation.with(GammonValues.of(knowledge.terms(question.stakes()), question.cube())
                        .orElseThrow())
                : explanation;
    }

    private static void neverSaid(String said) {
        assertTrue(!said.toLowerCase(Locale.ROOT).contains("no play"), said);
        for (String words : List.of(" 0.0 more", " 0.0 fewer", "  ", "..")) {
            assertTrue(!said.contains(words), said);
        }
        java.util.regex.Matcher same = java.util.regex.Pattern.compile("(\\d+)( \\w+)? instead of \\1\\b")
                .matcher(said);
        assertTrue(!same.find(), said);
    }
}
