"""Reads DXF files by ezdxf and prints, as JSON, what its audit finds wrong in each."""
import json
import sys

import ezdxf
from ezdxf import recover


def found(path):
    read = ezdxf.readfile(path)
    audit = read.audit()
    _, recovered = recover.readfile(path)
    return {
        "version": read.dxfversion,
        "entities": len(list(read.modelspace())),
        "faults": [f"{fault.code}: {fault.message}" for a in (audit, recovered) for fault in [*a.errors, *a.fixes]],
    }


print(json.dumps([found(path) for path in sys.argv[1:]]))
