// Serial ports by Web Serial, in browsers that have it. The program asks without waiting (system.js): a port
// by its number, of those that the person has allowed; a number stays with its port.
'use strict';

class SerialLine {
  constructor(port) {
    this.port = port;
    this.bytes = [];
    this.turn = 0;  // raised by each change of the speed
    this.changing = Promise.resolve();
    this.reading = Promise.resolve();
    this.reader = null;
    this.lost = false;
    this.isThere = true;
  }
  // 0 closes it.
  setSpeed(baud) {
    const turn = ++this.turn;
    this.bytes = [];
    this.lost = false;
    this.changing = this.changing.then(async () => {
      if (turn !== this.turn) return;
      if (this.reader) await this.reader.cancel().catch(() => {});
      await this.reading;
      if (this.port.readable) await this.port.close();
      if (baud === 0) return;
      await this.port.open({ baudRate: baud });
      this.reading = this.read(turn);
    }).catch(() => { this.lost = turn === this.turn; });
  }
  async read(turn) {
    this.reader = this.port.readable.getReader();
    try {
      for (let piece = await this.reader.read(); !piece.done; piece = await this.reader.read()) {
        if (turn === this.turn) this.keep(piece.value);
      }
    } catch (error) {
      this.lost = turn === this.turn;
    }
    this.reader.releaseLock();
    this.reader = null;
  }
  // At most about a minute of a fast receiver.
  keep(piece) {
    const kMost = 1 << 16;
    this.bytes.push(...piece);
    if (this.bytes.length > kMost) this.bytes.splice(0, this.bytes.length - kMost);
  }
  // Null once the port cannot be read.
  take(most) {
    return this.lost || !this.isThere ? null : this.bytes.splice(0, most);
  }
}

window.mastwiseSerial = {
  lines: [],
  supported: 'serial' in navigator,
  async find() {
    const ports = await navigator.serial.getPorts();
    for (const port of ports) {
      if (!this.lines.some((line) => line.port === port)) this.lines.push(new SerialLine(port));
    }
    for (const line of this.lines) line.isThere = ports.includes(line.port);
  },
  // While the page is touched.
  async choose() {
    await navigator.serial.requestPort().catch(() => null);
    await this.find();
  },
};
if (window.mastwiseSerial.supported) {
  window.mastwiseSerial.find();
  for (const news of ['connect', 'disconnect']) {
    navigator.serial.addEventListener(news, () => window.mastwiseSerial.find());
  }
}
