package org.pipwright.training.cuda;

/**
 * How games of self-play begin and go.
 *
 * @param strayShare share of turns in which a near-best play is made instead of the best
 * @param randomStarts share of games that begin with a few random turns
 * @param maxRandomTurns most random turns at the beginning
 * @param formulaGames share of games in which fixed formulas make the first plays of one side or both
 * @param maxFormulaTurns most turns of a game that they may play
 * @param margin equity within which a play is near-best, in points
 * @param maxTurns turns after which a game is truncated
 */
record GameRules(
        double strayShare,
        double randomStarts,
        int maxRandomTurns,
        double formulaGames,
        int maxFormulaTurns,
        float margin,
        int maxTurns) {}
