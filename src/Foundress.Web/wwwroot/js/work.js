// Hands work to the runtime beside the page (js/reckoner.js), which is started when it is first wanted and let go when idle.
const patience = 90_000;
const idleAfter = 180_000;

let worker = null;
let ready = null;
let idle = 0;
let onStep = () => { };
const waiting = new Map();   // id -> { resolve, reject }

export const listen = callback => { onStep = callback; };

/** Starts the worker unless it runs; resolves to the name of its build, or fails with the reason it cannot run here. */
export function start(culture) {
  clearTimeout(idle);
  ready ??= open(culture);
  ready.then(rest, () => { });
  return ready;
}

function open(culture) {
  return new Promise((resolve, reject) => {
    if (typeof Worker !== 'function') throw new Error('no-workers');
    const opened = worker = new Worker(new URL('reckoner.js', import.meta.url), { type: 'module' });
    const fail = reason => {
      clearTimeout(timer);
      if (worker === opened) end(reason);
      reject(new Error(reason));
    };
    const timer = setTimeout(() => fail('not-started-in-time'), patience);
    opened.onerror = event => { event.preventDefault(); fail(event.message || 'not-allowed-or-not-found'); };
    opened.onmessage = ({ data }) => {
      if (data.ready !== undefined) {
        clearTimeout(timer);
        resolve(data.ready);
      } else if (data.unfit !== undefined) {
        fail(data.unfit);
      } else {
        take(data);
      }
    };
    opened.postMessage({ culture });
  });
}

function take({ id, step, output, reason, broken }) {
  const job = waiting.get(id);
  if (!job) return;
  if (step !== undefined) {
    onStep(id, step);
    return;
  }
  waiting.delete(id);
  rest();
  if (output !== undefined) job.resolve(output);
  else job.reject(new Error(reason ?? 'stopped'));
  if (broken) end(reason);
}

function rest() {
  clearTimeout(idle);
  if (waiting.size === 0) idle = setTimeout(() => end('it was let go'), idleAfter);
}

function end(reason) {
  worker?.terminate();
  worker = ready = null;
  for (const job of waiting.values()) job.reject(new Error(reason));
  waiting.clear();
}

/** Does a job on the stored book; resolves to its answer. */
export function run(id, name, operation, entries, input) {
  return new Promise((resolve, reject) => {
    if (!worker) throw new Error('the worker is not running');
    clearTimeout(idle);
    waiting.set(id, { resolve, reject });
    worker.postMessage({ id, name, operation, entries, input });
  });
}

/** Stops a job at its next step. */
export const cancel = id => { if (waiting.has(id)) worker?.postMessage({ cancel: id }); };
