import fc from 'fast-check';

// The same cases every time, so that a change is judged by what it changed.
// To look further: FAST_CHECK_SEED=12345 npm run check, or =any for new ones each time.
const wanted = process.env.FAST_CHECK_SEED ?? '20261125';
if (wanted !== 'any') fc.configureGlobal({ seed: Number(wanted) });
