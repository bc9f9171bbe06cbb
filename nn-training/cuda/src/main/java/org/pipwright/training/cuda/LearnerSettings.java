package org.pipwright.training.cuda;

/**
 * How a network learns.
 *
 * @param batch lessons a step, a multiple of 64
 * @param beta1 how slowly the mean of gradients moves
 * @param beta2 how slowly the mean of their squares moves
 * @param decay weight decay a step, as a share of the rate
 * @param clip longest gradient of a mean loss
 * @param average how slowly the average of the weights moves
 */
record LearnerSettings(int batch, float beta1, float beta2, float decay, float clip, float average) {}
