import fc from 'fast-check';

/**
 * What random tests begin from: the same in every run, so that no commit fails by chance for what another brought.
 * TEST_SEED=random hunts; TEST_SEED=… runs a hunt’s find again.
 */
const { TEST_SEED } = process.env;
export const SEED = TEST_SEED === 'random' ? Date.now() % 1_000_000_007 : Number(TEST_SEED ?? 1);
if (!Number.isSafeInteger(SEED)) throw new Error(`TEST_SEED=${TEST_SEED} is no whole number, nor "random".`);

fc.configureGlobal({ seed: SEED });
