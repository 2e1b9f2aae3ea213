#!/usr/bin/env python3
"""windows_serial.py PROGRAM: whether the program for Windows, under wine, hears a receiver on COM10.
The port is one end of a pseudo-terminal; the receiver at the other says a position every half second."""

import os
import pty
import subprocess
import sys
import threading
import time
import tty


def sentence(body):
    checksum = 0
    for letter in body.encode():
        checksum ^= letter
    return f"${body}*{checksum:02X}\r\n".encode()


def speak(end):
    while True:
        now = time.gmtime()
        clock, day = time.strftime("%H%M%S", now), time.strftime("%d%m%y", now)
        os.write(end, sentence(f"GPRMC,{clock}.00,A,4230.0000,N,11830.0000,W,0.0,0.0,{day},,,A"))
        time.sleep(0.5)


def main():
    receiver, port = pty.openpty()
    tty.setraw(port)
    link = os.environ["WINEPREFIX"] + "/dosdevices/com10"
    if os.path.lexists(link):
        os.unlink(link)
    os.symlink(os.ttyname(port), link)
    threading.Thread(target=speak, args=(receiver,), daemon=True).start()
    heard = subprocess.run(["wine", sys.argv[1], "replay", "--device", "COM10", "--seconds", "12",
                            "--to", "43, -118"], capture_output=True, text=True, check=False)
    os.unlink(link)
    if "Last good fix: 42.500000, -118.500000" not in heard.stdout:
        sys.exit(heard.stdout + heard.stderr)


if __name__ == "__main__":
    main()
