// Before make_terrain in its own thread of the page: it makes the practice area's hills, which are then
// sent to the page (start.js).
var Module = {
  arguments: ['/'],
  postRun: [function () {
    FS.readdir('/').filter(function (name) { return name.endsWith('.hgt'); }).forEach(function (name) {
      var bytes = FS.readFile('/' + name);
      FS.unlink('/' + name);
      postMessage({ name: name, bytes: bytes }, [bytes.buffer]);
    });
    postMessage({});
  }],
};
