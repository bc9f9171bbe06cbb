package org.pipwright.engine.explain;

import java.util.function.Predicate;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;

/** What a side has before it, counted throw by throw and checker by checker from its definition; the mover is meant. */
final class NaivePlans {
    private NaivePlans() {}

    private static int throwsThatAllow(NaiveBoard board, Predicate<NaiveBoard> what) {
        int throwsThatDo = 0;
        for (int one = 1; one <= 6; one++) {
            for (int two = 1; two <= 6; two++) {
                throwsThatDo += NaivePlayGenerator.generate(board, one, two).results().stream()
                                .anyMatch(what)
                        ? 1
                        : 0;
            }
        }
        return throwsThatDo;
    }

    static Entry entry(NaiveBoard board) {
        return new Entry(board.mine(25), throwsThatAllow(board, result -> result.mine(25) == 0));
    }

    static Escape escape(NaiveBoard board) {
        Prime row = NaiveFacts.prime(board.swapped());
        if (row.length() < 3) {
            return new Escape(0, 36);
        }
        int behind = behind(board, row.from());
        return new Escape(behind, throwsThatAllow(board, result -> behind(result, row.from()) < behind));
    }

    /** The mover's checkers that the other side counts below one of its points, those on the bar included. */
    private static int behind(NaiveBoard board, int theirPoint) {
        int behind = 0;
        for (int place = 1; place <= 25; place++) {
            behind += 25 - place < theirPoint ? board.mine(place) : 0;
        }
        return behind;
    }

    /** A throw is safe if after some play no throw of the other side hits. */
    static int nextShots(NaiveBoard board) {
        return 36
                - throwsThatAllow(
                        board,
                        result -> throwsThatAllow(result.swapped(), reply -> reply.theirs(25) > result.mine(25)) == 0);
    }

    static Spread spread(NaiveBoard board) {
        int stacked = 0;
        int buried = 0;
        int gaps = 0;
        int homeBlots = 0;
        int spare = 0;
        for (int point = 1; point <= 24; point++) {
            int count = board.mine(point);
            stacked += count > 3 ? count - 3 : 0;
            buried += point <= 2 ? count : 0;
            gaps += point <= 6 && count == 0 ? 1 : 0;
            homeBlots += point <= 6 && count == 1 ? 1 : 0;
            for (int checker = 1; checker <= count; checker++) {
                boolean free = point >= 9 && point <= 18 || point >= 4 && point <= 8 && checker > 2;
                spare += free ? point - 3 : 0;
            }
        }
        return new Spread(stacked, buried, gaps, homeBlots, spare);
    }

    static Numbers numbers(NaiveBoard board) {
        int hitting = 0;
        int covering = 0;
        for (int die = 1; die <= 6; die++) {
            for (int from = 1; from <= 25; from++) {
                int to = from - die;
                boolean mayMove = board.mine(from) > 0 && (board.mine(25) == 0 || from == 25) && to >= 1;
                boolean wanted = to >= 3 && to <= 7 || to >= 18 && to <= 22;
                hitting |= mayMove && board.theirs(25 - to) == 1 ? 1 << die : 0;
                covering |= mayMove && wanted && board.mine(to) == 1 && board.mine(25) < 2 ? 1 << die : 0;
            }
        }
        return new Numbers(hitting, covering);
    }
}
