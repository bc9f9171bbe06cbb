package org.pipwright.bench.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One chance, predicted and observed. Positions where the rules have ruled it out are left out.
 *
 * @param chance which one
 * @param all all its positions together
 * @param bins by ranges of the prediction that are the same for every net
 * @param tenths by ten lots of about equally many positions, fewer where many predictions are the same
 */
record Curve(Chance chance, Bin all, List<Bin> bins, List<Bin> tenths) {
    static Curve of(Chance chance, Samples samples) {
        return new Curve(
                chance,
                sums(chance, samples, 0, 1).get(0),
                sums(chance, samples, chance.scale().edges()),
                sums(chance, samples, samples.tenths(chance)));
    }

    static List<Curve> all(Samples samples) {
        return Arrays.stream(Chance.values()).map(chance -> of(chance, samples)).toList();
    }

    private static List<Bin> sums(Chance chance, Samples samples, double... edges) {
        List<BinSums> sums = new ArrayList<>();
        for (int k = 0; k + 1 < edges.length; k++) {
            sums.add(new BinSums(edges[k], edges[k + 1]));
        }
        for (int i = 0; i < samples.size(); i++) {
            if (samples.possible(chance, i)) {
                double predicted = samples.predicted(chance, i);
                int at = Arrays.binarySearch(edges, predicted);
                int bin = Math.min(at >= 0 ? at : -at - 2, sums.size() - 1);
                sums.get(bin).add(samples.game(i), predicted, samples.happened(chance, i));
            }
        }
        return sums.stream().map(BinSums::bin).toList();
    }

    /** The tenth that is farthest off. */
    Bin worstTenth() {
        return tenths.stream()
                .filter(bin -> bin.count() > 0)
                .max((a, b) -> Double.compare(Math.abs(a.difference()), Math.abs(b.difference())))
                .orElse(all);
    }

    /** Mean distance of observed from predicted over the tenths, by their positions; chance alone makes it more than 0. */
    double meanDistance() {
        double sum = 0;
        for (Bin bin : tenths) {
            sum += bin.count() == 0 ? 0 : bin.count() * Math.abs(bin.difference());
        }
        return sum / all.count();
    }
}
