"""Reads a door file into nested SI dictionaries, with the defaults printed in the contract."""

import json

from units import si

G = 9.80665
DENSITY = {  # kg/m^3, the model page's list
    "polycarbonate": 1200, "acrylic": 1185, "PVC": 1400, "ABS": 1050, "birch plywood": 690, "oak": 720, "aluminium": 2700,
    "glass": 2500, "EPDM rubber": 1200,
}
R = "required"
SECTIONS = {
    "opening": {"width": R, "height": R, "sillHeight": R, "outOfPlumb": "0 deg", "heightMargin": "5 cm", "widthMargin": "5 cm"},
    "flap": {"width": R, "height": R, "thickness": R, "hingeOffset": R, "bottomClearance": "5 mm"},
    "hinge": {"frictionTorque": R, "viscousDamping": R, "staticRatio": 1, "stopAngle": "100 deg", "stopRestitution": 0.3},
    "seal": {"frictionTorque": "0 N m", "contactAngle": "4 deg"},
    "damper": {"coefficient": "0 N m s/rad", "withinAngle": "180 deg"},
    "air": {"density": "1.204 kg/m^3", "dragCoefficient": 1.18, "swingFactor": 1, "windSpeed": "0 m/s", "pressureDifference": "0 Pa"},
    "magnets": {"sides": 2, "perSide": 1, "pitch": "25 mm", "diameter": R, "thickness": R, "remanence": R, "gap": R,
                "distanceFromHinge": R, "temperature": "20 degC"},
    "latch": {"boltWidth": R, "slotWidth": R, "distanceFromHinge": R, "tipGap": R, "engagement": R, "edgeHalfWidth": R,
              "boltMass": R, "springForce": R, "frictionCoefficient": 0.2, "guideFactor": 2, "sideLoad": "0 N", "offset": "0 mm"},
    "solenoid": {"ratedVoltage": R, "ratedCurrent": R, "inductance": R, "stroke": R, "thermalResistance": R,
                 "thermalTimeConstant": R, "ambient": "20 degC"},
    "driver": {"dropVoltage": "1.2 V", "onResistance": "0 ohm", "currentGain": 1000, "driveVoltage": "3.3 V",
               "baseEmitterVoltage": "1.4 V", "baseResistor": "1 kohm", "clampVoltage": "0.7 V"},
    "timer": {"holdTime": "12 s", "resistorTolerance": "5 %", "capacitorTolerance": "20 %"},
    "supply": {"voltage": "24 V", "currentLimit": "500 mA", "logicVoltage": "5 V", "logicCurrent": "40 mA", "efficiency": 0.85,
               "thermalResistance": "65 K/W", "ambient": "25 degC"},
    "detection": {"range": "3 m", "farSideRange": "0 m", "pulseInterval": "1 s"},
}
CHOICES = {
    "magnets": {"arrangement": "none", "polarity": "like", "force": "attract"}, "latch": {"boltPoints": "up"},
    "solenoid": {"insulationClass": "B"}, "driver": {"kind": "darlington", "clamp": "diode"}, "timer": {"retriggers": True},
    "supply": {"regulator": "linear"},
}
OPTIONAL = ("latch", "magnets", "solenoid", "driver", "timer", "supply")


def read_section(name, given):
    out = {}
    for key, default in SECTIONS[name].items():
        text = given.get(key, default)
        if text is R or text == R:
            raise ValueError(f"{name}.{key} is required")
        out[key] = si(text)
    for key, default in CHOICES.get(name, {}).items():
        out[key] = given.get(key, default)
    return out


def read_animal(given):
    shoulder, mass = si(given["shoulderHeight"]), si(given["mass"])
    return {
        "name": given.get("name", ""), "shoulder": shoulder, "chest": si(given["chestWidth"]), "body": si(given["bodyLength"]),
        "mass": mass, "speed": si(given.get("speed", "1 m/s")), "stepRatio": si(given.get("stepRatio", 0.45)),
        "pushHeight": si(given["pushHeight"]) if "pushHeight" in given else 0.9 * shoulder,
        "comfortablePush": si(given["comfortablePush"]) if "comfortablePush" in given else 0.1 * mass * G,
    }


def read_door(path):
    with open(path, encoding="utf-8") as handle:
        raw = json.load(handle)
    door = {"name": raw["name"], "animals": [read_animal(a) for a in raw["animals"]]}
    for name in SECTIONS:
        door[name] = None if name in OPTIONAL and name not in raw else read_section(name, raw.get(name, {}))
    flap = raw["flap"]
    door["flap"]["density"] = si(flap["density"]) if "density" in flap else float(DENSITY[flap.get("material", "polycarbonate")])
    door["flap"]["extra"] = [(si(m["mass"]), si(m["distanceFromHinge"])) for m in flap.get("extraMasses", [])]
    if door["magnets"] and door["magnets"]["arrangement"] == "none":
        door["magnets"] = None
    if door["solenoid"]:
        door["solenoid"]["pull"] = [(si(x), si(f)) for x, f in raw["solenoid"]["pull"]]
    if door["timer"] and "resistor" in raw["timer"]:
        door["timer"]["resistor"], door["timer"]["capacitor"] = si(raw["timer"]["resistor"]), si(raw["timer"]["capacitor"])
    release = raw.get("release", {})
    door["release"] = {"angle": si(release["angle"]) if "angle" in release else None, "speed": si(release.get("speed", "0 rad/s"))}
    door["margin"] = si(raw.get("study", {}).get("margin", 0.2))
    return door
