import { holdAnswer } from './heldAnswers.ts';

/** Setup of every project that asks the program over HTTP: `fetch` holds each answer of the interface to its schema. */
const held = Symbol.for('every answer of the interface is held to its schema');
const scope = globalThis as typeof globalThis & { [held]?: true };

if (scope[held] !== true) {
  scope[held] = true;
  const { fetch } = globalThis;
  globalThis.fetch = async (input, init) => {
    const response = await fetch(input, init);
    const url = input instanceof Request ? input.url : String(input);
    if (/\/api(\/|\?|$)/.test(url)) {
      const method = init?.method ?? (input instanceof Request ? input.method : 'GET');
      const { status, headers } = response;
      holdAnswer({
        method,
        url,
        status,
        type: headers.get('content-type'),
        text: await response.clone().text(),
      });
    }
    return response;
  };
}
