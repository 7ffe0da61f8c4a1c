"""The worked sizing problem in plain Python and in NumPy: the other side of closures.js.

Same formulas, same secant steps from the light side, an excess below 1e-12 of the gross mass. Reads {"designs": n, "plain": m} as its first argument and
prints one line of JSON: seconds taken and the sum of gross masses, so that the caller can check that the answers agree.
"""
import json
import math
import sys
import time

GRAVITY = 9.80665
GAS = 287.05287


def density(altitude, offset):
    temperature = 288.15 - 0.0065 * altitude
    pressure = 101325.0 * (temperature / 288.15) ** (GRAVITY / (GAS * 0.0065))
    return pressure / (GAS * (temperature + offset))


def required(mass, payload, sqrt=math.sqrt, greater=max):
    """Required mass at a gross mass; with NumPy's sqrt and maximum it works on arrays."""
    rho = density(600.0, 15.0)
    count, area = 8, 15.0
    weight = mass * GRAVITY
    thrust = weight / 0.95
    hover = thrust * sqrt(thrust / (2 * rho * count * math.pi * 1.3**2)) / 0.72
    zero_lift = (0.42 + count * 0.018) / area
    induced = 1 / (math.pi * 11 * 0.8)

    def power(speed):
        force = 0.5 * rho * speed * speed * area
        lift = weight / force
        return force * (zero_lift + induced * lift * lift) * speed

    speed = 58.0
    stall = sqrt(2 * weight / (rho * area * 1.5))
    least = sqrt(2 * weight / (rho * area * math.sqrt(3 * zero_lift / induced)))
    reserve_speed = greater(least, 1.3 * stall)
    cruise_time = 85000.0 / speed
    energy = (
        hover / 0.9 * 90
        + (power(speed) * cruise_time + power(reserve_speed) * 1200) / (0.84 * 0.91)
        + 2000 * (90 + cruise_time + 1200)
    )
    battery = energy / (235 * 3600 * 0.8)
    motors = hover * (16 / 11) ** 1.5 / 5000
    return payload + battery + motors + 0.32 * mass + 90 + 0.03 * mass + count * 6.5


def close(payload):
    mass = 1000.0
    excess = required(mass, payload) - mass
    following = mass + excess
    while True:
        excess_following = required(following, payload) - following
        if abs(excess_following) <= 1e-12 * following:
            return following
        slope = (excess_following - excess) / (following - mass)
        mass, excess = following, excess_following
        following = mass - excess_following / slope


def plain(payloads):
    begin = time.process_time()
    total = sum([close(payload) for payload in payloads])
    return time.process_time() - begin, total


def vectorised(payloads):
    import numpy

    payload = numpy.array(payloads)
    begin = time.process_time()
    mass = numpy.full(len(payload), 1000.0)
    excess = required(mass, payload, numpy.sqrt, numpy.maximum) - mass
    following = mass + excess
    while True:
        excess_following = required(following, payload, numpy.sqrt, numpy.maximum) - following
        # Designs that have converged stand still: their secant would be rounding over rounding.
        moving = abs(excess_following) > 1e-12 * following
        if not moving.any():
            return time.process_time() - begin, float(following.sum())
        slope = numpy.where(moving, (excess_following - excess) / (following - mass), -1.0)
        mass = numpy.where(moving, following, mass)
        excess = numpy.where(moving, excess_following, excess)
        following = numpy.where(moving, following - excess_following / slope, following)


def main():
    asked = json.loads(sys.argv[1])
    payloads = [350 + 100 * index / asked["designs"] for index in range(asked["designs"])]
    seconds, total = plain(payloads[: asked["plain"]])
    answer = {"python": sys.version.split()[0], "plain": {"seconds": seconds, "sum": total}}
    try:
        import numpy

        vectorised(payloads)
        seconds, total = vectorised(payloads)
        answer["numpy"] = {"version": numpy.__version__, "seconds": seconds, "sum": total}
    except ImportError:
        pass
    print(json.dumps(answer))


main()
