// Keeps the person's files in the browser's own database: they are read before the start, and saved after
// each change.
'use strict';

// /mastwise is the program's data folder, /files what was picked or is to be saved.
const keptFolders = ['/mastwise', '/files'];

function openDatabase() {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('mastwise', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore('files');
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
  });
}

// Each file's bytes by its path; null for a folder.
function readAll(database) {
  return new Promise((resolve, reject) => {
    const files = new Map();
    const reading = database.transaction('files').objectStore('files').openCursor();
    reading.onsuccess = () => {
      const at = reading.result;
      if (!at) {
        resolve(files);
        return;
      }
      files.set(at.key, at.value);
      at.continue();
    };
    reading.onerror = () => reject(reading.error);
  });
}

class Keeper {
  // `tell` gets an error's text when files could not be saved, and '' when they are again.
  constructor(database, files, tell) {
    this.database = database;
    this.files = files;
    this.tell = tell;
    this.saving = false;
    this.waitUntil = 0;
  }
  static async open(tell) {
    const database = await openDatabase();
    return new Keeper(database, await readAll(database), tell);
  }
  // Before the program runs.
  restore(fs) {
    this.fs = fs;
    for (const folder of keptFolders) fs.mkdirTree(folder);
    for (const [path, bytes] of this.files) {
      fs.mkdirTree(bytes ? path.slice(0, path.lastIndexOf('/')) : path);
      if (bytes) fs.writeFile(path, bytes, { canOwn: true });
    }
    this.files = null;
    this.saved = this.state();
  }
  // What tells one state of each file from another.
  state() {
    const stamps = new Map();
    const look = (folder) => {
      for (const name of this.fs.readdir(folder)) {
        if (name === '.' || name === '..') continue;
        const path = folder + '/' + name;
        const about = this.fs.stat(path);
        const isFolder = this.fs.isDir(about.mode);
        stamps.set(path, isFolder ? 'folder' : about.mtime.getTime() + ' ' + about.size + ' ' + about.ino);
        if (isFolder) look(path);
      }
    };
    keptFolders.forEach(look);
    return stamps;
  }
  // One transaction: a page that is closed meanwhile leaves the files of before.
  save() {
    if (this.saving || performance.now() < this.waitUntil) return;
    const state = this.state();
    const changed = [...state.keys()].filter((path) => this.saved.get(path) !== state.get(path));
    const gone = [...this.saved.keys()].filter((path) => !state.has(path));
    if (changed.length + gone.length === 0) return;
    this.saving = true;
    const failed = (error) => {
      const kRest_ms = 2000;
      this.saving = false;
      this.waitUntil = performance.now() + kRest_ms;
      this.tell(String((error && error.message) || error));
    };
    try {
      const transaction = this.database.transaction('files', 'readwrite', { durability: 'strict' });
      transaction.oncomplete = () => {
        this.saving = false;
        this.saved = state;
        this.tell('');
      };
      transaction.onabort = () => failed(transaction.error);
      const store = transaction.objectStore('files');
      for (const path of gone) store.delete(path);
      for (const path of changed) {
        store.put(state.get(path) === 'folder' ? null : this.fs.readFile(path), path);
      }
    } catch (error) {
      failed(error);
    }
  }
}
