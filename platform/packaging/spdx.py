#!/usr/bin/env python3
"""spdx.py STAGE BUILD LICENSE: print an SPDX 2.3 list (JSON) of the package unpacked at STAGE: each
file with its sums and license, the Debian packages whose code is compiled in, and the libraries
that the package depends on, with the versions it was built with.

spdx.py STAGE LIBRARIES LICENSE VERSION FORM: the same of the package for Windows or for browsers.
LIBRARIES has a file for each library that is compiled in, NAME_VERSION, with its license.

The licenses of assets are those of the table in LICENSE, those of Debian packages come from their
copyright files. What cannot be read there is NOASSERTION, never a guess."""

import datetime
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys

# The licenses that LICENSE names, by words of its table.
IN_LICENSE = [
    ("SIL Open Font License 1.1", "OFL-1.1"),
    ("Attribution 4.0", "CC-BY-4.0"),
    ("Open Database License 1.0", "ODbL-1.0"),
    ("GNU Lesser General Public License 3 or later", "LGPL-3.0-or-later"),
    ("public domain", "LicenseRef-public-domain"),
    ("MIT", "MIT"),
]
# Debian's short names that are not SPDX's, where SPDX has one for the same text.
TO_SPDX = {"expat": "MIT", "mit": "MIT", "bsd-3-clause": "BSD-3-Clause", "zlib": "Zlib",
           "bsd-2-clause": "BSD-2-Clause", "apache-2.0": "Apache-2.0", "boost-1.0": "BSL-1.0",
           "public-domain": "LicenseRef-public-domain", "isc": "ISC", "bsl-1.0": "BSL-1.0",
           "lgpl-2.1+": "LGPL-2.1-or-later", "lgpl-2+": "LGPL-2.0-or-later",
           "lgpl-3+": "LGPL-3.0-or-later", "gpl-2+": "GPL-2.0-or-later",
           "gpl-3+": "GPL-3.0-or-later"}


def run(*command, **more):
    return subprocess.run(command, capture_output=True, text=True, check=False, **more).stdout


def asset_licenses(text):
    """By folder of assets, what LICENSE says of it."""
    found = {}
    for folder, words in re.findall(r"^  assets/(\w+)\s+((?:.|\n(?=    ))*)", text, re.MULTILINE):
        words = " ".join(words.split())
        for sign, license_id in IN_LICENSE:
            if sign in words:
                found[folder] = license_id
                break
    return found


def license_of_file(path, assets):
    match = re.match(r"(?:usr/share/mastwise|assets)/(\w+)/", path)
    if match:
        return assets.get(match.group(1), "NOASSERTION")
    if path in ("usr/share/doc/mastwise/copyright", "LICENSE.txt"):
        return "NOASSERTION"  # the texts of all the licenses
    if path == "mastwise.data.gz":  # all assets but the practice area's hills
        return " AND ".join(sorted(set(assets.values())))
    return "MIT"


def debian_license(package):
    return license_in(pathlib.Path("/usr/share/doc", package.split(":")[0], "copyright"))


def license_in(path):
    """The license of a Debian package's main part by its machine-readable copyright file."""
    text = path.read_text(encoding="utf-8", errors="replace") if path.exists() else ""
    match = re.search(r"^Files:\s*\*\s*\n(?:.*\n)*?License:\s*(.+)$", text, re.MULTILINE)
    return TO_SPDX.get(match.group(1).strip().lower(), "NOASSERTION") if match else "NOASSERTION"


def debian_packages(paths):
    """The installed packages that own these files."""
    found = set()
    paths = sorted(paths)
    for start in range(0, len(paths), 500):
        for line in run("dpkg", "-S", *paths[start:start + 500]).splitlines():
            found.update(name.strip() for name in line.rsplit(": ", 1)[0].split(","))
    return found


def compiled_in(build):
    """Packages whose headers or static libraries the program is made of. The compiler's and the C
    library's own are left out: they are part of every program."""
    deps = run("ninja", "-C", str(build), "-t", "deps")
    ours = re.split(r"\n\n", deps)
    headers = {os.path.normpath(line.strip()) for block in ours
               if not re.match(r"(tests|assets)/", block) for line in block.splitlines()[1:]
               if line.strip().startswith("/usr/")}
    link = run("ninja", "-C", str(build), "-t", "commands", "mastwise").splitlines()[-1]
    archives = set(re.findall(r"/usr/\S+\.a\b", link))
    headers = debian_packages(headers)
    archives = debian_packages(archives)
    compiler = re.compile(r"(libc6|libstdc\+\+|libgcc|linux-libc|gcc|g\+\+|libcrypt)[\w.+-]*")
    return {one for one in headers | archives if not compiler.fullmatch(one.split(":")[0])}, archives


def version_of(package):
    return run("dpkg-query", "-W", "-f=${Version}", package) or "NOASSERTION"


def spdx_package(package, version, license_id, supplier="Organization: Debian"):
    return {"SPDXID": "SPDXRef-Package-" + re.sub(r"[^A-Za-z0-9.-]", "-", package),
            "name": package, "versionInfo": version, "supplier": supplier,
            "downloadLocation": "NOASSERTION", "filesAnalyzed": False,
            "licenseConcluded": "NOASSERTION", "licenseDeclared": license_id,
            "copyrightText": "NOASSERTION"}


def add_debian_packages(build, control, packages, relate, own):
    """What a Debian package is made of and depends on."""
    inside, archives = compiled_in(build)
    foreign = control["Architecture"] != run("dpkg", "--print-architecture").strip()
    depends = {re.split(r"[ :(]", one.strip())[0] for one in control["Depends"].split(",")}
    for name in sorted(inside):
        package = spdx_package(name, version_of(name), debian_license(name))
        packages.append(package)
        kind = "STATIC_LINK" if name in archives else "DEPENDS_ON"
        relate(own["SPDXID"], kind, package["SPDXID"])
        if kind == "DEPENDS_ON":
            package["comment"] = "headers, compiled in"
    for name in sorted(depends):
        installed = f"{name}:{control['Architecture']}" if foreign else name
        version = version_of(installed)
        package = spdx_package(name, version, debian_license(name))
        package["comment"] = "loaded from the system; the version is that of the build"
        packages.append(package)
        relate(own["SPDXID"], "DEPENDS_ON", package["SPDXID"])


def main():
    stage, build, license_file = map(pathlib.Path, sys.argv[1:4])
    cross_built = len(sys.argv) > 4
    if cross_built:
        control = {"Version": sys.argv[4], "Architecture": sys.argv[5]}
    else:
        control = dict(re.findall(r"^(\w[\w-]*): (.*)$", (stage / "DEBIAN/control").read_text(), re.M))
    assets = asset_licenses(license_file.read_text(encoding="utf-8"))
    files = []
    for path in sorted(one for one in (stage if cross_built else stage / "usr").rglob("*")
                       if one.is_file()):
        name = str(path.relative_to(stage))
        content = path.read_bytes()
        files.append({
            "SPDXID": f"SPDXRef-File-{len(files) + 1}", "fileName": "./" + name,
            "checksums": [{"algorithm": "SHA1", "checksumValue": hashlib.sha1(content).hexdigest()},
                          {"algorithm": "SHA256",
                           "checksumValue": hashlib.sha256(content).hexdigest()}],
            "licenseConcluded": license_of_file(name, assets), "licenseInfoInFiles": ["NOASSERTION"],
            "copyrightText": "NOASSERTION"})
    sums = "".join(sorted(one["checksums"][0]["checksumValue"] for one in files))
    own = spdx_package("mastwise", control["Version"], "MIT", "Organization: Mastwise developers")
    own |= {"SPDXID": "SPDXRef-Package", "filesAnalyzed": True,
            "packageVerificationCode":
                {"packageVerificationCodeValue": hashlib.sha1(sums.encode()).hexdigest()},
            "licenseInfoFromFiles": sorted({one["licenseConcluded"] for one in files})}
    packages, relations = [own], [
        {"spdxElementId": "SPDXRef-DOCUMENT", "relationshipType": "DESCRIBES",
         "relatedSpdxElement": own["SPDXID"]}]

    def relate(element, kind, other):
        relations.append({"spdxElementId": element, "relationshipType": kind,
                          "relatedSpdxElement": other})

    for one in files:
        relate(own["SPDXID"], "CONTAINS", one["SPDXID"])
    if cross_built:
        for path in sorted(build.iterdir()):
            name, version = path.name.rsplit("_", 1)
            package = spdx_package(name, version, license_in(path))
            packages.append(package)
            relate(own["SPDXID"], "STATIC_LINK", package["SPDXID"])
    else:
        add_debian_packages(build, control, packages, relate, own)
    epoch = int(os.environ["SOURCE_DATE_EPOCH"])
    name = f"mastwise_{control['Version']}_{control['Architecture']}"
    print(json.dumps({
        "spdxVersion": "SPDX-2.3", "dataLicense": "CC0-1.0", "SPDXID": "SPDXRef-DOCUMENT",
        "name": name, "documentNamespace": f"urn:mastwise:{name}:{hashlib.sha1(sums.encode()).hexdigest()}",
        "creationInfo": {
            "created": datetime.datetime.fromtimestamp(epoch, datetime.timezone.utc)
                       .strftime("%Y-%m-%dT%H:%M:%SZ"),
            "creators": ["Tool: platform/packaging/spdx.py"]},
        "hasExtractedLicensingInfos": [{
            "licenseId": "LicenseRef-public-domain", "name": "Public domain",
            "extractedText": "In the public domain, as the LICENSE of Mastwise names it."}],
        "packages": packages, "files": files, "relationships": relations}, indent=1))


if __name__ == "__main__":
    main()
