package org.pipwright.engine.review;

import java.util.List;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;

/** What the tests review with. */
final class Setting {
    static final MatchTable TABLE = ShippedMatchTable.load();

    static final List<String> JUDGE = List.of("net test", "table shipped");

    private Setting() {}

    static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, null)
                : new MatchTerms((MatchStakes) stakes, TABLE);
    }

    static Reviews reviews(ReviewSettings settings, int threads) {
        return new Reviews(Knowledge.of(HastyEvaluator::new), settings, threads);
    }

    static Review review(GameRecord record, int lookahead) {
        return reviews(new ReviewSettings(lookahead, 0, 1, true), 1).review(record, WorkFile.NONE, Progress.NONE);
    }

    /** A record typed in a test, its lines in one text. */
    static GameRecord record(String rules, String... lines) {
        return RecordText.parse(
                "pipwright record 1\nplayers: Ada, Ben\n" + rules + "\n\n" + String.join("\n", lines) + "\n");
    }
}
