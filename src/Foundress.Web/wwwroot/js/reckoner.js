// A second runtime beside the page, from the same files: it does long work on the book while the page stays at hand.
// The page sends { culture } once, then { id, name, operation, entries, input } for each job and { cancel: id };
// it is sent { ready } or { unfit }, and for each job { id, step }, then { id, output }, { id, reason } or { id, cancelled };
// { id, reason, broken } when the runtime itself can go on no longer.
import * as store from './store.js';

let exports = null;
const cancelled = new Set();

async function begin(culture) {
  globalThis.dotnetSidecar = true;   // a runtime of its own, not a thread of the page's
  const { dotnet } = await import('../_framework/dotnet.js');
  const { setModuleImports, getAssemblyExports, getConfig, INTERNAL } = await dotnet.withApplicationCulture(culture).create();
  // Answers hold sentences: the texts of the page's language are needed here too. The page's own start loads them the same way.
  const language = culture.split('-')[0];
  if (getConfig().resources?.satelliteResources?.[language]) await INTERNAL.loadSatelliteAssemblies([language]);
  setModuleImports('store', store);
  setModuleImports('reckoner', {
    step: (id, step) => postMessage({ id, step }),
    refuse: (id, reason) => postMessage({ id, reason }),
  });
  exports = (await getAssemblyExports(getConfig().mainAssemblyName)).Foundress.Web.Background.Reckoner;
  return exports.Build();
}

async function run({ id, name, operation, entries, input }) {
  try {
    const output = await exports.RunAsync(id, name, operation, entries, input);
    if (output !== null) postMessage({ id, output });
    else if (cancelled.has(id)) postMessage({ id, cancelled: true });
  } catch (error) {
    postMessage({ id, reason: String(error?.message ?? error), broken: true });
  }
  cancelled.delete(id);
}

onmessage = ({ data }) => {
  if (data.culture !== undefined) {
    begin(data.culture).then(build => postMessage({ ready: build }), error => postMessage({ unfit: String(error?.message ?? error) }));
  } else if (data.cancel !== undefined) {
    cancelled.add(data.cancel);
    if (exports.Cancel(data.cancel)) cancelled.add(data.cancel);
  } else {
    run(data);
  }
};
