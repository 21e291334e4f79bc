"""Second, independent implementation of the model page: every result of the contract for the doors beside this file.

    python3 tests/reference/model/model_reference.py            all doors/*.door.json -> expected.json
    python3 tests/reference/model/model_reference.py FILE …     print the results of these files, write nothing
"""

import json
import pathlib
import sys
import time

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

from doorfile import read_door  # noqa: E402
from results import compute  # noqa: E402


def main(arguments):
    files = [pathlib.Path(a) for a in arguments] or sorted((HERE / "doors").glob("*.door.json"))
    expected = {}
    for path in files:
        begun = time.time()
        door = read_door(path)
        results, relatch, sets = compute(door)
        expected[path.name] = {"door": door["name"], "results": results, "relatch": relatch, "restSets": sets}
        print(f"{path.name}: {time.time() - begun:.1f} s", flush=True)
        if arguments:
            print(json.dumps(expected[path.name], indent=1))
    if not arguments:
        text = json.dumps(expected, indent=1, ensure_ascii=False, allow_nan=False)
        (HERE / "expected.json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
