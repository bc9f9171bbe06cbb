package org.pipwright.training.cuda;

/** Trains residual networks on an NVIDIA card. */
public final class CudaTrainer extends AcceleratedTrainer {
    /** The word that asks for it. */
    static final String DEVICE = "cuda";

    /** Makes the trainer, without looking for a card yet. */
    public CudaTrainer() {
        super(DEVICE, recipe -> new CudaAccelerator(recipe), CudaTrainer::take);
    }

    /**
     * Takes the card for this thread, and so many threads of this machine.
     *
     * @throws org.pipwright.training.device.MissingDeviceException if there is no card, or a library it needs is missing
     */
    static void take(int threads) {
        ThreadTrainer.take(threads);
        Gpu.load();
        Gpu.use();
    }
}
