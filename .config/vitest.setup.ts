import fc from "fast-check";

// Properties are searched from one seed, so that a change that breaks one shows on every machine and nothing else does.
// To search elsewhere: FC_SEED=123 npm run test:unit
fc.configureGlobal({ seed: Number(process.env["FC_SEED"] ?? 20261125) });
