// Before a program: its memory is shared by threads. A page that is not isolated has such memory too, for one
// thread, but no name for it.
if (typeof SharedArrayBuffer === 'undefined') {
  globalThis.SharedArrayBuffer = new WebAssembly.Memory({ initial: 0, maximum: 0, shared: true }).buffer.constructor;
}
