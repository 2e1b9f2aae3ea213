#!/usr/bin/env python3
"""private.py MASTWISE: the app connects only to the receiver that the user names, and to a
publisher only when the user runs fetch and agrees. It listens to nobody, and writes only into its
data folder and the files that it is told to write.

Watches system calls with strace; 77 (skipped) where that is not possible."""

import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import threading

CALLS = "network,openat,open,creat,mkdir,mkdirat,rename,renameat,renameat2,unlink,symlink,link"
OPENS_TO_WRITE = re.compile(r'(?:openat\([^,]+, |open\()"([^"]*)", [^)]*O_(?:WRONLY|RDWR|CREAT)')
CHANGES_NAMES = re.compile(r'(?:creat|mkdir|mkdirat|rename\w*|unlink|symlink|link)\((.*)\) = 0')
# The graphics driver's own, and devices.
NOT_OURS = re.compile(r"mesa_shader_cache|^/dev/|^/proc/|^/sys/|^/tmp/\.X|^/memfd")


def watched(arguments, home, folder):
    log = os.path.join(folder, "calls")
    environment = dict(os.environ, HOME=home, XDG_DATA_HOME=os.path.join(home, "data"))
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "DBUS_SESSION_BUS_ADDRESS", "XDG_RUNTIME_DIR"):
        environment.pop(name, None)
    command = ["strace", "-f", "-qq", "-s", "400", "-e", "trace=" + CALLS, "-o", log] + arguments
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True,
                          stdin=subprocess.DEVNULL, timeout=300, check=False)
    with open(log, encoding="utf-8", errors="replace") as lines:
        return done, lines.read().splitlines()


def faults_of(lines, allowed, port=None):
    faults = []
    for line in lines:
        if re.search(r"\b(bind|listen|accept4?)\(", line) and "AF_NETLINK" not in line:
            faults.append("listens: " + line)
        if re.search(r"\b(connect|sendto|sendmsg)\(", line) and re.search(r"AF_INET6?\b", line):
            named = port is not None and f"htons({port})" in line and "127.0.0.1" in line
            if not named:
                faults.append("connects: " + line)
        opened = OPENS_TO_WRITE.search(line)
        paths = [opened.group(1)] if opened and " = -1 " not in line else []
        changed = CHANGES_NAMES.search(line)
        paths += re.findall(r'"([^"]*)"', changed.group(1)) if changed else []
        for path in paths:
            inside = not path.startswith("/") or any(path.startswith(one) for one in allowed)
            if not inside and not NOT_OURS.search(path):
                faults.append("writes: " + line)
    return faults


def receiver():
    """A receiver on this machine's network: two sentences to whoever connects, then silence."""
    server = socket.create_server(("127.0.0.1", 0))

    def serve():
        link, _ = server.accept()
        link.sendall(b"$GPGGA,120000,4426.113,N,07140.560,W,1,08,1.0,300.0,M,,M,,*5B\r\n")
        link.close()

    threading.Thread(target=serve, daemon=True).start()
    return server.getsockname()[1]


def main():
    program = os.path.abspath(sys.argv[1])
    if shutil.which("strace") is None:
        print("SKIPPED: there is no strace")
        return 77
    with tempfile.TemporaryDirectory() as top:
        home, folder = os.path.join(top, "home"), os.path.join(top, "chosen")
        os.makedirs(os.path.join(home, "data"))
        os.makedirs(folder)
        probe = subprocess.run(["strace", "-o", os.path.join(top, "probe"), "true"],
                               capture_output=True, check=False)
        if probe.returncode != 0:
            print("SKIPPED: strace may not watch here")
            return 77
        shutil.copy(os.path.join(os.path.dirname(os.path.abspath(__file__)),
                                 "../../assets/practice/stations.csv"), folder)
        port = receiver()
        publisher = receiver()  # hangs up on whoever asks for a file
        runs = [
            (["card", "--pdf", "card.pdf"], None),
            (["survey", "--at", "44.4, -71.7"], None),
            (["plan"], None),
            (["import", "stations", "stations.csv", "--positions", "as-read"], None),
            (["survey", "--at", "42.9, -119.4"], None),
            (["places", "Bend"], None),
            (["fetch", "terrain", "--bbox", "44,-72,45,-71", "--dry-run"], None),
            (["fetch", "stations", "--dry-run"], None),
            (["fetch", "landcover", "--bbox", "44,-72,45,-71"], None),  # nobody says yes
            (["shot", "aim", "aim.png"], None),
            (["shot", "map", "map.png"], None),
            (["fetch", "terrain", "--bbox", "44,-72,45,-71", "--yes", "--base",
              f"http://127.0.0.1:{publisher}"], publisher),
            (["replay", "--device", f"127.0.0.1:{port}", "--seconds", "2"], port),
        ]
        faults = []
        seen_ports = set()
        for arguments, named in runs:
            done, lines = watched([program] + arguments, home, folder)
            if done.returncode != 0 and named is None:
                faults.append(f"{arguments} failed: {done.stderr}")
            faults += [f"{' '.join(arguments)}: {one}"
                       for one in faults_of(lines, [home, folder], named)]
            if named is not None and any(f"htons({named})" in one for one in lines):
                seen_ports.add(named)
        if seen_ports != {port, publisher}:
            faults.append("a connection to the named receiver or publisher was not seen")
        # The watch itself notices what it must.
        for line, wanted in (
                ('1 connect(3, {sa_family=AF_INET, sin_port=htons(443), sin_addr=inet_addr("192.0.2.1")}, 16) = 0',
                 "connects"),
                ("1 listen(3, 5) = 0", "listens"),
                ('1 openat(AT_FDCWD, "/etc/other", O_WRONLY|O_CREAT, 0644) = 3', "writes"),
                ('1 rename("/elsewhere/a", "/elsewhere/b") = 0', "writes")):
            if not any(one.startswith(wanted) for one in faults_of([line], [home, folder])):
                faults.append(f"the watch missed: {line}")
    for fault in faults:
        print(fault, file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
