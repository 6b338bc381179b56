// Forecasts kept on this device, in a store of their own: they can be worked out again, so losing them loses nothing.
const patience = 5_000;   // a store that does not answer must not hold up the forecasts themselves

function connect() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('foundress-forecasts', 1);
    request.onupgradeneeded = () => request.result.createObjectStore('courses');
    request.onsuccess = () => {
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another tab holds an older form of the store open'));
  });
}

function run(mode, work) {
  return Promise.race([once(mode, work), new Promise((_, reject) => setTimeout(() => reject(new Error('the store did not answer')), patience))]);
}

async function once(mode, work) {
  const db = await connect();
  try {
    return await new Promise((resolve, reject) => {
      const tx = db.transaction('courses', mode);
      tx.onabort = () => reject(tx.error ?? new Error('the transaction was cut off'));
      const request = work(tx.objectStore('courses'));
      tx.oncomplete = () => resolve(request.result);
    });
  } finally {
    db.close();
  }
}

/** The forecast kept for a place: its key, a line end, the forecast; null when there is none. */
export const get = async (operation, place) => await run('readonly', store => store.get([operation, place])) ?? null;
export const put = (operation, place, text) => run('readwrite', store => store.put(text, [operation, place]));
export const forget = operation => run('readwrite', store => store.delete(IDBKeyRange.bound([operation], [operation, []])));
