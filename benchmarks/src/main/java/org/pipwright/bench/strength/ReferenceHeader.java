package org.pipwright.bench.strength;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.Serializable;

/**
 * Where reference equities come from.
 *
 * @param kind always {@value #KIND}
 * @param decisionsSha256 of the file of decisions
 * @param net the net that played the rollouts, with the exact bear-off tables asked first
 * @param netSha256 SHA-256 of its weights
 * @param seed the seed of decision n's dice is this plus n
 * @param lookahead of both sides' plays in the rollouts
 * @param truncation rolls after which a game is truncated and valued by the net, 0 for never
 * @param trials most games a candidate
 * @param error games stop once the standard error of every difference to the best play is this or less, in points, but
 *     for plays that are four standard errors beyond {@code within}
 * @param within plays this close to the best with lookahead 1 are candidates, and the second best always
 * @param share larger errors are allowed up to this share of the difference; null for none
 * @param device how a device rolled out, null for the processor
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReferenceHeader(
        String kind,
        String decisionsSha256,
        String net,
        String netSha256,
        long seed,
        int lookahead,
        int truncation,
        int trials,
        double error,
        double within,
        Double share,
        OnDevice device)
        implements Serializable {
    /**
     * How games are rolled out on a device, many at once. A quick net drops plays, and luck is taken off by lookahead 1.
     * Games are truncated only while there is contact; they end where the tables know the chances, distributions included.
     *
     * @param name the device
     * @param quick the net that drops plays
     * @param quickSha256 SHA-256 of its weights
     * @param keep points within which it keeps plays, six at most
     * @param choices most plays looked at one roll further
     * @param choiceMargin points within which they are
     */
    public record OnDevice(String name, String quick, String quickSha256, double keep, int choices, double choiceMargin)
            implements Serializable {}

    static final String KIND = "pipwright reference 1";

    /** Standard errors. */
    private static final int SURE = 4;

    /** Files keep five digits: both numbers of a play may be off by half of the last one. */
    private static final double ROUNDING = 0.5e-5;

    /** The processor's. */
    ReferenceHeader(
            String kind,
            String decisionsSha256,
            String net,
            String netSha256,
            long seed,
            int lookahead,
            int truncation,
            int trials,
            double error,
            double within) {
        this(kind, decisionsSha256, net, netSha256, seed, lookahead, truncation, trials, error, within, null, null);
    }

    /**
     * Whether a difference to the best play is known well enough. That of a play that is surely no candidate need not be.
     *
     * @param behind mean of the difference, at most 0
     * @param standardError its standard error
     */
    boolean exactEnough(double behind, double standardError) {
        return standardError <= allowed(behind) || -behind - SURE * standardError > within;
    }

    /** The largest standard error of a difference that need not be smaller, but for plays that are surely no candidates. */
    double allowed(double behind) {
        return share == null ? error : Math.max(error, -share * behind);
    }

    /** The same of all plays of a reference; some come to the most games before that. */
    boolean exactEnough(Reference reference) {
        return reference.plays().stream()
                .allMatch(rolled -> exactEnough(rolled.behind() - ROUNDING, rolled.error() - ROUNDING));
    }
}
