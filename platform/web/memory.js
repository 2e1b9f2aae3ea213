// Runs before a program, whose memory threads can share. A page that is not isolated may have such memory too,
// but lacks the name of its type.
if (typeof SharedArrayBuffer === 'undefined') {
  globalThis.SharedArrayBuffer = new WebAssembly.Memory({ initial: 0, maximum: 0, shared: true }).buffer.constructor;
}
