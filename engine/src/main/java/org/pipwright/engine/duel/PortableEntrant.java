package org.pipwright.engine.duel;

import java.io.Serializable;
import java.util.Optional;
import org.pipwright.engine.network.PortableModel;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Workforce;

/**
 * An entrant on its way to another machine: a net or a baseline.
 *
 * @param name its name
 * @param model its net; null for a baseline, which its name says all of
 * @param lookahead future rolls averaged over
 */
public record PortableEntrant(String name, Shared<PortableModel> model, int lookahead) implements Serializable {
    /**
     * An entrant to be sent.
     *
     * @param entrant a net or a baseline
     * @param workforce who sends it
     * @return the entrant on its way
     * @throws IllegalArgumentException if it is neither a net nor a baseline
     */
    public static PortableEntrant of(Entrant entrant, Workforce workforce) {
        Optional<Shared<PortableModel>> model = entrant.model().map(net -> workforce.share(new PortableModel(net)));
        if (model.isEmpty() && Baselines.named(entrant.name()).isEmpty()) {
            throw new IllegalArgumentException(
                    entrant.name() + " is neither a net nor a baseline: only these can be sent");
        }
        return new PortableEntrant(entrant.name(), model.orElse(null), entrant.lookahead());
    }

    /**
     * The entrant where it has arrived.
     *
     * @return the same player
     */
    public Entrant entrant() {
        return model == null
                ? Baselines.named(name).orElseThrow()
                : Entrant.ofModel(name, model.get().model(), lookahead);
    }
}
