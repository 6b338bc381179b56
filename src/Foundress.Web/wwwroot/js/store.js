// The journal on this device. A fresh connection for each transaction: phones drop idle ones in the background.
const channel = new BroadcastChannel('foundress-book');

function connect() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('foundress', 1);
    request.onupgradeneeded = () => {
      const entries = request.result.createObjectStore('entries', { autoIncrement: true });
      entries.createIndex('id', ['op', 'id'], { unique: true });
      entries.createIndex('op', 'op');
      entries.createIndex('pending', ['op', 'pending']);
      entries.createIndex('refused', ['op', 'refused']);
      request.result.createObjectStore('meta');
      request.result.createObjectStore('drafts');
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another tab holds an older form of the store open'));
  });
}

async function once(names, mode, work) {
  const db = await connect();
  try {
    return await new Promise((resolve, reject) => {
      const tx = db.transaction(names, mode, mode === 'readwrite' ? { durability: 'strict' } : undefined);
      tx.onabort = () => reject(tx.error ?? new Error('the transaction was cut off'));
      const outcome = work(...[names].flat().map(name => tx.objectStore(name)));
      tx.oncomplete = () => resolve(outcome?.());
    });
  } finally {
    db.close();
  }
}

async function run(names, mode, work) {
  try {
    return await once(names, mode, work);
  } catch (error) {
    if (error?.name === 'QuotaExceededError') throw error;
    return await once(names, mode, work);
  }
}

const whole = op => IDBKeyRange.bound([op], [op, []]);

// The rule of the ledger where one id was given to two entries: the earlier by clock, device and text is held everywhere.
function comesBefore(left, right) {
  const [a, b] = [JSON.parse(left), JSON.parse(right)];
  if (a.clock !== b.clock) return a.clock < b.clock;
  if (a.device !== b.device) return a.device < b.device;
  return left < right;
}

/**
 * Adds [id, text] pairs; those already held are passed over, except where the new text comes before. The draft they were
 * written from, if any, goes with the same step: never are both there, nor neither. Resolves once they are on the disk.
 */
export const append = (op, pairs, pending, draft) => run(draft ? ['entries', 'drafts'] : 'entries', 'readwrite', (store, drafts) => {
  drafts?.delete(draft);
  for (const [id, json] of JSON.parse(pairs)) {
    const row = pending ? { op, id, json, pending: 1 } : { op, id, json };
    const request = store.add(row);
    request.onerror = event => {
      if (request.error.name !== 'ConstraintError') return;
      event.preventDefault();
      event.stopPropagation();
      store.index('id').openCursor([op, id]).onsuccess = found => {
        const cursor = found.target.result;
        // What the server gives it holds: it need not be given again.
        if (cursor && !pending && cursor.value.json === json && (cursor.value.pending || cursor.value.refused !== undefined)) cursor.update(row);
        if (!cursor || cursor.value.json === json || !comesBefore(json, cursor.value.json)) return;
        // Under a new key, so that other tabs read it.
        store.delete(cursor.primaryKey);
        store.add(row);
      };
    };
  }
});

/** Everything of an operation that this device stored after a position: {"last", "entries"}. */
export const readAfter = (op, after) => run('entries', 'readonly', store => {
  const range = IDBKeyRange.lowerBound(after, true);
  const keys = store.getAllKeys(range), rows = store.getAll(range);
  return () => `{"last":${keys.result.at(-1) ?? after},"entries":[${rows.result.filter(row => row.op === op).map(row => row.json).join()}]}`;
});

/** Up to so many entries that have not been copied to the server, as a JSON array. */
export const readPending = (op, limit) => run('entries', 'readonly', store => {
  const rows = store.index('pending').getAll(whole(op), limit);
  return () => `[${rows.result.map(row => row.json).join()}]`;
});

export const countPending = op => run('entries', 'readonly', store => {
  const count = store.index('pending').count(whole(op));
  return () => count.result;
});

export const countRefused = op => run('entries', 'readonly', store => {
  const count = store.index('refused').count(whole(op));
  return () => count.result;
});

/** Takes [id, reason or null] pairs off the list of entries still to be copied. */
export const settle = (op, outcomes) => run('entries', 'readwrite', store => {
  for (const [id, refused] of JSON.parse(outcomes)) {
    store.index('id').openCursor([op, id]).onsuccess = event => {
      const cursor = event.target.result;
      if (!cursor) return;
      const { json } = cursor.value;
      cursor.update(refused ? { op, id, json, refused } : { op, id, json });
    };
  }
});

/** Puts every entry of an operation back on the list of entries to be copied. */
export const unsettle = op => run('entries', 'readwrite', store => {
  store.index('op').openCursor(op).onsuccess = event => {
    const cursor = event.target.result;
    if (!cursor) return;
    const { id, json } = cursor.value;
    cursor.update({ op, id, json, pending: 1 });
    cursor.continue();
  };
});

/** Puts the entries that the server would not take back on the list of entries to be copied. */
export const retryRefused = op => run('entries', 'readwrite', store => {
  store.index('refused').openCursor(whole(op)).onsuccess = event => {
    const cursor = event.target.result;
    if (!cursor) return;
    const { id, json } = cursor.value;
    cursor.update({ op, id, json, pending: 1 });
    cursor.continue();
  };
});

/** Forgets an operation with its drafts. Only ever used for the invented demo. */
export const forget = op => run(['entries', 'drafts'], 'readwrite', (store, drafts) => {
  drafts.delete(IDBKeyRange.bound(`${op}/`, `${op}/\uffff`));
  store.index('op').openKeyCursor(op).onsuccess = event => {
    const cursor = event.target.result;
    if (!cursor) return;
    store.delete(cursor.primaryKey);
    cursor.continue();
  };
});

/** Drops what the server holds of an operation: entries still to be copied, and those it would not take, stay. */
export const dropCopied = op => run('entries', 'readwrite', store => {
  store.index('op').openCursor(op).onsuccess = event => {
    const cursor = event.target.result;
    if (!cursor) return;
    if (!cursor.value.pending && !cursor.value.refused) cursor.delete();
    cursor.continue();
  };
});

const get = name => key => run(name, 'readonly', store => {
  const request = store.get(key);
  return () => request.result ?? null;
});
const put = name => (key, value) => run(name, 'readwrite', store => {
  if (value === null) store.delete(key);
  else store.put(value, key);
});

export const metaGet = get('meta');
export const metaSet = put('meta');
export const draftGet = get('drafts');
export const draftSet = put('drafts');

/** The value already under a key, or this one if there was none: two tabs that start together agree. */
export const metaFirst = (key, value) => run('meta', 'readwrite', store => {
  let kept = value;
  const request = store.get(key);
  request.onsuccess = () => request.result === undefined ? store.put(value, key) : kept = request.result;
  return () => kept;
});

export const tell = text => channel.postMessage(text);
export const listen = callback => { channel.onmessage = event => callback(event.data); };
