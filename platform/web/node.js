// Before the program that node runs: it has node's own variables and files.
Module['preRun'] = function () {
  Object.assign(ENV, process.env);
};
