package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.ranking.RankedPlay.Evaluated;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;

/** Finds questions about plays. */
final class PlayExaminer implements Examiner {
    /** So many plays at least get the full lookahead. */
    private static final int DEEP = 5;

    /** A first look with less lookahead only has to come this close to what is asked for. */
    private static final double FIRST_LOOK = 0.5;

    private final DrillSettings settings;
    private final PlaySearch search;
    private final Player weaker;
    private final PlayGenerator generator = new PlayGenerator();

    PlayExaminer(DrillSettings settings, Judge judge, Player weaker) {
        this.settings = settings;
        this.search = new PlaySearch(judge::judgement, LookaheadSettings.DEFAULT, 1);
        this.weaker = weaker;
    }

    @Override
    public Optional<Question> question(Moment moment, long game, Dice choices) {
        Position position = moment.position();
        int[] planes = position.toPlanes();
        if (generator.generate(planes, 0, moment.roll().high(), moment.roll().low()) < 2) {
            return Optional.empty();
        }
        int chosen = weaker.choose(planes, 0, generator, choices);
        Position other = Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
        List<RankedPlay> ranking = List.of();
        for (int lookahead = Math.min(1, settings.lookahead()); lookahead <= settings.lookahead(); lookahead++) {
            ranking = search.rank(position, moment.roll(), lookahead);
            if (!hardEnough(position, ranking, other, FIRST_LOOK)) {
                return Optional.empty();
            }
        }
        List<RankedPlay> deep = deepened(moment, ranking, other);
        return hardEnough(position, deep, other, 1)
                ? Optional.of(new PlayQuestion(game, position, moment.roll(), deep, of(deep, other)))
                : Optional.empty();
    }

    private boolean hardEnough(Position before, List<RankedPlay> ranking, Position other, double share) {
        Position best = ranking.get(0).play().result();
        return -of(ranking, other).cost() >= share * settings.cost()
                && -ranking.get(1).cost() >= share * settings.margin()
                && settings.theme().setsApart(before, best, other);
    }

    private static RankedPlay of(List<RankedPlay> ranking, Position result) {
        return ranking.stream()
                .filter(ranked -> ranked.play().result().equals(result))
                .findFirst()
                .orElseThrow();
    }

    /** The ranking with the best few and the weaker player's play all looked at equally deeply. */
    private List<RankedPlay> deepened(Moment moment, List<RankedPlay> ranking, Position other) {
        List<Play> some = new ArrayList<>();
        List<Evaluated> all = new ArrayList<>();
        for (RankedPlay ranked : ranking) {
            Play play = ranked.play();
            boolean full = ranked.depth().lookahead() == settings.lookahead();
            if (full || some.size() < DEEP || play.result().equals(other)) {
                some.add(play);
            } else {
                all.add(new Evaluated(play, ranked.outcomes(), ranked.depth()));
            }
        }
        search.rank(moment.position(), moment.roll(), some, settings.lookahead())
                .forEach(ranked -> all.add(new Evaluated(ranked.play(), ranked.outcomes(), ranked.depth())));
        return RankedPlay.inOrder(all);
    }
}
