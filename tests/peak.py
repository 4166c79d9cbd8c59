"""Runs a command and says how much memory it took at most, in bytes, and its ending.

    python tests/peak.py COMMAND…
"""

import resource
import subprocess
import sys

ended = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, check=False)
# Linux counts in kibibytes, macOS in bytes.
unit = 1 if sys.platform == "darwin" else 1024
print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss * unit, ended.returncode)
