import fc from 'fast-check';

/**
 * Laws are tried with the same random cases in every `npm test`, so that a run tells of the code and not of luck;
 * `npm run fuzz` tries them with others.
 */
const given = Number(process.env['LAWS_SEED'] ?? 20261125);
if (!Number.isInteger(given)) throw new Error(`LAWS_SEED takes a whole number, got ${process.env['LAWS_SEED']}`);
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: given });
