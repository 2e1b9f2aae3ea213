// What platform/*_web.cpp ask of the browser (system_web.hpp).
mergeInto(LibraryManager.library, {
  web_isolated: function () {
    return typeof crossOriginIsolated !== 'undefined' && crossOriginIsolated ? 1 : 0;
  },
  // The kinds of news: WebNews.
  $webPosition: {
    options: { enableHighAccuracy: true, maximumAge: 0 },
    some: function (at) {
      webPosition.at = at;
      webPosition.news = 1;
      webPosition.heard = performance.now();
    },
    none: function (error) {
      // A time-out says nothing: the next position may come.
      if (error.code === 1) webPosition.news = 2;
      if (error.code === 2) webPosition.news = 3;
    },
    watch: null,
    wanted: false,
    news: 0,
    at: null,
    heard: 0,  // when news came, or was asked for
    kSilence_ms: 3000,
  },
  web_position_begin__deps: ['$webPosition'],
  web_position_begin: function () {
    webPosition.news = 0;
    if (typeof navigator === 'undefined' || !navigator.geolocation) {
      webPosition.news = 3;
      return;
    }
    webPosition.wanted = true;
    var watch = function () {
      if (!webPosition.wanted || webPosition.watch !== null) return;
      webPosition.watch = navigator.geolocation.watchPosition(webPosition.some, webPosition.none,
        webPosition.options);
    };
    // The browser asks the person, which a page does only once it has been touched.
    var ask = function () {
      window.addEventListener('pointerup', watch, { once: true });
    };
    if (!navigator.permissions) {
      ask();
      return;
    }
    navigator.permissions.query({ name: 'geolocation' }).then(function (permission) {
      if (permission.state === 'prompt') ask();
      else watch();
    }, ask);
  },
  web_position_end__deps: ['$webPosition'],
  web_position_end: function () {
    if (webPosition.watch !== null) navigator.geolocation.clearWatch(webPosition.watch);
    webPosition.watch = null;
    webPosition.wanted = false;
  },
  web_position_take__deps: ['$webPosition'],
  web_position_take: function (into) {
    var news = webPosition.news;
    webPosition.news = 0;
    // A watch is silent while the tablet does not move.
    if (webPosition.watch !== null && performance.now() > webPosition.heard + webPosition.kSilence_ms) {
      webPosition.heard = performance.now();
      navigator.geolocation.getCurrentPosition(webPosition.some, webPosition.none, webPosition.options);
    }
    if (news !== 1) return news;
    var known = function (figure) {
      return typeof figure === 'number' ? figure : NaN;
    };
    var coords = webPosition.at.coords;
    var figures = [webPosition.at.timestamp / 1000, coords.latitude, coords.longitude, coords.accuracy,
      known(coords.speed), known(coords.heading)];
    for (var i = 0; i < figures.length; ++i) HEAPF64[(into >> 3) + i] = figures[i];
    return news;
  },
  // Its samples wait here, the newest of ten seconds at most.
  $webMotion: {
    most: 80,
    samples: [],
    listener: null,
    refused: false,
  },
  web_motion_begin__deps: ['$webMotion'],
  web_motion_begin: function (every_ms) {
    webMotion.samples = [];
    webMotion.refused = typeof DeviceMotionEvent === 'undefined';
    if (webMotion.refused) return;
    // Browsers that ask the person have the opposite sign.
    var asks = typeof DeviceMotionEvent.requestPermission === 'function';
    var sign = asks ? -1 : 1;
    var last = -Infinity;
    var listener = webMotion.listener = function (event) {
      var felt = event.accelerationIncludingGravity;
      if (!felt || felt.x === null || event.timeStamp - last < every_ms) return;
      last = event.timeStamp;
      webMotion.samples.push([event.timeStamp / 1000, sign * felt.x, sign * felt.y, sign * felt.z]);
      if (webMotion.samples.length > webMotion.most) webMotion.samples.shift();
    };
    if (!asks) {
      window.addEventListener('devicemotion', listener);
      return;
    }
    // They ask only while the page is touched.
    window.addEventListener('pointerup', function () {
      if (webMotion.listener !== listener) return;
      DeviceMotionEvent.requestPermission().then(function (answer) {
        if (webMotion.listener !== listener) return;
        if (answer === 'granted') window.addEventListener('devicemotion', listener);
        else webMotion.refused = true;
      }, function () { webMotion.refused = true; });
    }, { once: true });
  },
  web_motion_end__deps: ['$webMotion'],
  web_motion_end: function () {
    if (webMotion.listener) window.removeEventListener('devicemotion', webMotion.listener);
    webMotion.listener = null;
  },
  web_motion_take__deps: ['$webMotion'],
  web_motion_take: function (into) {
    if (webMotion.refused) return 2;
    var sample = webMotion.samples.shift();
    if (!sample) return 0;
    for (var i = 0; i < sample.length; ++i) HEAPF64[(into >> 3) + i] = sample[i];
    return 1;
  },
  web_zone_name: function (into, size) {
    stringToUTF8(Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC', into, size);
  },
  // Browsers give the screen back to sleep when the page is hidden; start.js asks again.
  web_keep_awake: function (awake) {
    if (typeof window !== 'undefined') window.mastwiseKeepAwake(awake !== 0);
  },
  web_serial_count: function () {
    return typeof window === 'undefined' ? 0 : window.mastwiseSerial.lines.length;
  },
  web_serial_is_there: function (number) {
    return window.mastwiseSerial.lines[number - 1].isThere ? 1 : 0;
  },
  web_serial_speed: function (number, baud) {
    var line = window.mastwiseSerial.lines[number - 1];
    if (line) line.setSpeed(baud);
  },
  web_serial_take: function (number, into, most) {
    var line = window.mastwiseSerial.lines[number - 1];
    var bytes = line ? line.take(most) : null;
    if (!bytes) return -1;
    HEAPU8.set(bytes, into);
    return bytes.length;
  },
  web_offer: function (buttons) {
    if (typeof window !== 'undefined') window.mastwiseOffer(buttons);
  },
  web_darken: function (dark) {
    if (typeof window !== 'undefined') window.mastwiseDarken(dark !== 0);
  },
  web_hills_ready: function () {
    return typeof window === 'undefined' || window.mastwiseHillsReady() ? 1 : 0;
  },
});
