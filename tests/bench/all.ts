/** `npm run bench`: one after another, so that none takes time from another. */
await import('./answers.bench.ts');
await import('./plate.bench.ts');
