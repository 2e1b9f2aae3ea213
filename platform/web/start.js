// Loads the program and the person's data, starts it, and keeps what it saves.
'use strict';

const english = {
  loading: 'Loading Mastwise',
  server: 'The server does not have this part of Mastwise: ',
  unsaved: 'The browser cannot save your records. Free space on this device; Mastwise keeps trying. ',
  noPicture: 'The browser has dropped the picture. Reload the page.',
  noData: 'The browser keeps no data for this page. Leave its private window, or allow site data. ',
  stopped: 'Mastwise has stopped. Reload the page; your records are kept. ',
  notLoaded: 'The program was not loaded. Reload the page.',
  otherTab: 'Mastwise is open in another tab. Close that one, then reload this page.',
  add: 'Add a file',
  added: 'The file is in Documents now. Open Data and import it.',
  save: 'Save a file',
  nothing: 'Nothing to save yet. Export your records first: Logbook, Export and import.',
  connect: 'Connect a serial device',
  done: 'Done',
};
const spanish = {
  loading: 'Cargando Mastwise',
  server: 'El servidor no tiene esta parte de Mastwise: ',
  unsaved: 'El navegador no puede guardar sus registros. Libere espacio; Mastwise sigue intentando. ',
  noPicture: 'El navegador perdió la imagen. Vuelva a cargar la página.',
  noData: 'El navegador no guarda datos de esta página. Salga de la ventana privada o permita los datos del sitio. ',
  stopped: 'Mastwise se detuvo. Vuelva a cargar la página; sus registros están guardados. ',
  notLoaded: 'No se cargó el programa. Vuelva a cargar la página.',
  otherTab: 'Mastwise está abierto en otra pestaña. Ciérrela y vuelva a cargar esta página.',
  add: 'Agregar un archivo',
  added: 'El archivo ya está en Documentos. Abra Datos e impórtelo.',
  save: 'Guardar un archivo',
  nothing: 'Todavía no hay nada que guardar. Exporte primero sus registros.',
  connect: 'Conectar un aparato serie',
  done: 'Listo',
};
const words = (navigator.language || 'en').startsWith('es') ? spanish : english;

// Instead of the program: while it is not there.
function tell(text) {
  document.getElementById('message').textContent = text;
}
// Below the running program.
function warn(text) {
  document.getElementById('warning').textContent = text;
}

// An error in words for a person. Any other is the browser's own.
class Told extends Error {}

// Files come compressed, whatever the server does. One that unpacks them itself is fine too. Each
// part is unpacked and compiled while the rest still loads.
async function load(name, type) {
  const answer = await fetch(name);
  if (!answer.ok) throw new Told(words.server + name);
  const [start, whole] = answer.body.tee();
  const reader = start.getReader();
  const { value: first } = await reader.read();
  reader.cancel();
  const packed = first && first[0] === 0x1f && first[1] === 0x8b;
  return new Response(packed ? whole.pipeThrough(new DecompressionStream('gzip')) : whole,
    { headers: { 'Content-Type': type } });
}
const loadAssets = async () => (await load('mastwise.data.gz', 'application/octet-stream')).arrayBuffer();
const compile = () => WebAssembly.compileStreaming(load('mastwise.wasm.gz', 'application/wasm'));

// The hills of the practice area are made here: they would double the download, and take a few
// seconds of another processor.
let hills = 'wanted';
window.mastwiseHillsReady = () => {
  if (hills !== 'wanted') return hills === 'there';
  hills = 'being made';
  const maker = new Worker('mastwise_hills.js');
  maker.onmessage = (event) => {
    if (event.data.name) {
      window.Module.FS.writeFile('/assets/practice/' + event.data.name, event.data.bytes, { canOwn: true });
      return;
    }
    maker.terminate();
    hills = 'there';
    performance.mark('mastwise hills');
  };
  // Without them the practice area's ground is unknown, which its survey says.
  maker.onerror = (error) => {
    console.error('the hills: ' + error.message);
    hills = 'there';
  };
  return false;
};

let wakeLock = null;
let wakeWanted = false;
async function followWake() {
  if (!navigator.wakeLock) return;
  if (wakeWanted && !wakeLock && document.visibilityState === 'visible') {
    wakeLock = await navigator.wakeLock.request('screen').catch(() => null);
    if (wakeLock) wakeLock.addEventListener('release', () => { wakeLock = null; });
  } else if (!wakeWanted && wakeLock) {
    await wakeLock.release();
  }
}
window.mastwiseKeepAwake = (awake) => {
  wakeWanted = awake;
  followWake();
};
document.addEventListener('visibilitychange', followWake);

// Dots per inch: a CSS pixel is about 1/160 inch on what is held in the hand, and 1/96 elsewhere.
function dotsPerInch() {
  const held = window.matchMedia('(pointer: coarse)').matches;
  const dots = (held ? 160 : 96) * window.devicePixelRatio;
  return Math.min(600, Math.max(50, dots)).toFixed(0);
}

// In the looks for the dark nothing beside the canvas is bright, also while the page is loaded.
window.mastwiseDarken = (dark) => {
  document.documentElement.classList.toggle('dark', dark);
  localStorage.setItem('dark', dark ? 'yes' : '');
};
document.documentElement.classList.toggle('dark', localStorage.getItem('dark') === 'yes');

// Files in and out: the program sees them in its folder of documents.
window.mastwiseOffer = (buttons) => {
  document.getElementById('files').hidden = buttons !== 1;
  document.getElementById('receiver').hidden = buttons !== 2 || !window.mastwiseSerial.supported;
};
function bindButtons(fs) {
  const connect = document.getElementById('connect');
  connect.textContent = words.connect;
  connect.onclick = () => window.mastwiseSerial.choose();
  const folder = keptFolders[1];
  const dialog = document.getElementById('saved');
  const show = (parts) => {
    const done = document.createElement('button');
    done.textContent = words.done;
    done.onclick = () => dialog.close();
    dialog.replaceChildren(...parts, done);
    dialog.showModal();
  };
  document.getElementById('add-words').textContent = words.add;
  document.getElementById('add').onchange = async (event) => {
    for (const file of event.target.files) {
      fs.writeFile(folder + '/' + file.name, new Uint8Array(await file.arrayBuffer()));
    }
    event.target.value = '';
    show([words.added]);
  };
  const save = document.getElementById('save');
  save.textContent = words.save;
  save.onclick = () => {
    const names = fs.readdir(folder).filter((name) => fs.isFile(fs.stat(folder + '/' + name).mode));
    show(names.length === 0 ? [words.nothing] : names.map((name) => {
      const link = document.createElement('a');
      link.textContent = name;
      link.download = name;
      link.href = URL.createObjectURL(new Blob([fs.readFile(folder + '/' + name)]));
      return link;
    }));
  };
}

async function start() {
  tell(words.loading);
  const noData = (error) => {
    throw new Told(words.noData + (error.message || error));
  };
  const [program, assets, keeper] = await Promise.all([
    compile(), loadAssets(),
    Keeper.open((why) => warn(why && words.unsaved + why)).catch(noData)]);
  const canvas = document.getElementById('canvas');
  canvas.addEventListener('webglcontextlost', () => tell(words.noPicture));
  // SDL hears of the window's size only; the canvas changes with what is shown below it.
  new ResizeObserver(() => window.dispatchEvent(new Event('resize'))).observe(canvas);
  window.Module = {
    canvas,
    // SDL follows the canvas's size only if that differs from the wished one.
    arguments: ['--dpi', dotsPerInch(), '--size', '640x480'],
    instantiateWasm: (imports, receive) => {
      WebAssembly.instantiate(program, imports)
        .then((instance) => receive(instance, program), (error) => tell(words.stopped + error));
      return {};
    },
    getPreloadedPackage: () => assets,
    printErr: (text) => {
      console.error(text);
      if (text.startsWith('mastwise: ')) tell(text);  // it has ended
    },
    preRun: [() => keeper.restore(window.Module.FS)],
    onRuntimeInitialized: () => {
      const isFirstStart = !window.Module.FS.analyzePath(keptFolders[0] + '/logbook').exists;
      bindButtons(window.Module.FS);
      const face = new FontFace('B612', window.Module.FS.readFile('/assets/fonts/B612-Regular.otf'));
      document.fonts.add(face);
      setInterval(() => keeper.save(), 100);
      document.addEventListener('visibilitychange', () => keeper.save());
      window.addEventListener('pagehide', () => keeper.save());
      requestAnimationFrame(() => requestAnimationFrame(() => {
        if (document.getElementById('message').textContent === words.loading) tell('');
        performance.mark('mastwise started');
        readyTheNextStart();
        if (isFirstStart) window.mastwiseHillsReady();
      }));
    },
    onAbort: (why) => tell(words.stopped + why),
  };
  const script = document.createElement('script');
  script.src = 'mastwise.js';
  script.onerror = () => tell(words.notLoaded);
  document.body.append(script);
}

// The service worker loads every file again, so it waits until this start is done.
function readyTheNextStart() {
  if ('serviceWorker' in navigator) navigator.serviceWorker.register('service_worker.js');
}

// A second page on the same data would overwrite what the first saves.
function startAlone() {
  const began = () => start().catch((error) => {
    tell(error instanceof Told ? error.message : `${words.notLoaded} ${error.message || error}`);
  });
  if (!navigator.locks) {
    began();
    return;
  }
  navigator.locks.request('mastwise', { ifAvailable: true }, (lock) => {
    if (!lock) {
      tell(words.otherTab);
      return null;
    }
    began();
    return new Promise(() => {});
  });
}

if (navigator.storage && navigator.storage.persist) navigator.storage.persist();
startAlone();
