"""Makes moon.json, once: where the moon stands and how much of it is lit, by PyEphem (libastro), checked by Astropy.

    pip install ephem==4.2.1 astropy==8.0.2
    python moon.py

Evenings and nights from 1975 to 2095 at places on both halves of the globe, at sea level, without refraction. `height` and
`bearing` are topocentric degrees (bearing from north by east), `lit` the lit share of the disc and `distance` in km, both from the middle of
the Earth. Astropy's own moon (ERFA's moon98) must agree within 0.01 degrees up to 2025, whose Earth rotation is measured, before
a case is kept.
"""

import json
import math
import pathlib
import warnings

import astropy
import astropy.units as u
import ephem
from astropy.coordinates import AltAz, EarthLocation, get_body
from astropy.time import Time
from astropy.utils import iers

warnings.simplefilter("ignore")
iers.conf.auto_download = False

PLACES = [
    ("Berlin", 52.52, 13.405),
    ("Denver", 39.7392, -104.9903),
    ("Sydney", -33.8688, 151.2093),
    ("Quito", -0.1807, -78.4678),
    ("Tromso", 69.6492, 18.9553),
]
YEARS = [1975, 1988, 2000, 2010, 2018, 2024, 2026, 2030, 2050, 2095]

cases = []
for i, year in enumerate(YEARS):
    for j, (place, latitude, longitude) in enumerate(PLACES):
        # Strewn over the months and the hours of the evening.
        day = 1 + (7 * i + 11 * j) % 28
        month = 1 + (5 * i + 3 * j) % 12
        hour = (17 + (3 * i + 2 * j) % 8 - longitude / 15) % 24
        utc = f"{year}-{month:02}-{day:02}T{int(hour):02}:{int(hour * 60) % 60:02}:00"
        here = ephem.Observer()
        here.lat, here.lon, here.elevation, here.pressure = math.radians(latitude), math.radians(longitude), 0, 0
        here.date = ephem.Date(utc.replace("-", "/").replace("T", " "))
        moon = ephem.Moon(here)
        height, bearing = math.degrees(moon.alt), math.degrees(moon.az)
        geocentric = ephem.Moon()
        geocentric.compute(here.date)
        if year < 2025:
            time = Time(utc, scale="utc")
            site = EarthLocation(lat=latitude * u.deg, lon=longitude * u.deg, height=0 * u.m)
            other = get_body("moon", time, site).transform_to(AltAz(obstime=time, location=site))
            apart = math.hypot(other.alt.deg - height, ((other.az.deg - bearing + 180) % 360 - 180) * math.cos(moon.alt))
            print(f"{place} {utc}: {height:8.3f} {bearing:8.3f}, Astropy {apart:.4f} degrees apart")
            assert apart < 0.01
        cases.append({
            "place": place, "utc": utc, "latitude": latitude, "longitude": longitude,
            "height": round(height, 4), "bearing": round(bearing, 4), "lit": round(moon.phase / 100, 5),
            "distance": round(geocentric.earth_distance * 149597870.7),
        })

lines = ["{", f' "library": "PyEphem {ephem.__version__}, checked by Astropy {astropy.__version__}",', ' "cases": [']
lines.append(",\n".join("  " + json.dumps(case) for case in cases))
lines += [" ]", "}"]
text = "\n".join(lines) + "\n"
json.loads(text)
pathlib.Path(__file__).with_name("moon.json").write_text(text)
