#!/usr/bin/env python3
"""Time networks (core/flow/time_network.h) against NetworkX (Debian package python3-networkx), on random graphs.

    tests/against/networkx_check.py PROGRAM      the program is tests/against/networks/answers.cpp

Whether the limits can be kept: negative_edge_cycle (Bellman-Ford). All pairs: floyd_warshall. A cycle told must be a
cycle of the graph of distances, be negative, and have no more sides than the shortest that there is. Exit 77: NetworkX
is not installed.
"""
import os
import random
import subprocess
import sys

try:
    import networkx
except ModuleNotFoundError:
    system_python = "/usr/bin/python3"
    if os.path.exists(system_python) and os.path.realpath(sys.executable) != os.path.realpath(system_python):
        if subprocess.run([system_python, "-c", "import networkx"], capture_output=True).returncode == 0:
            os.execv(system_python, [system_python, *sys.argv])
    print("SKIPPED: python3-networkx is not installed")
    sys.exit(77)

SEED = 20260314
NETWORKS = 1500


def some_network(dice):
    """(events, [(from, to, least, most)]); sparse or dense, with slack or without, times of seconds to days."""
    events = dice.randint(1, 14)
    unit = dice.choice([1, 60, 3600])
    count = dice.randint(0, dice.choice([events, 2 * events, 4 * events]))
    # Limits drawn around times that exist leave the network consistent; those drawn freely mostly do not.
    fair = dice.random() < 0.3
    when = [dice.randint(0, 50 * unit) for _ in range(events)]
    constraints = []
    for _ in range(count):
        a, b = dice.randrange(events), dice.randrange(events)
        apart = when[b] - when[a] if fair else dice.randint(-10 * unit, 20 * unit)
        least = apart - dice.randint(0, 20 * unit) if dice.random() < 0.7 else None
        most = apart + dice.randint(0, 20 * unit) if least is None or dice.random() < 0.5 else None
        constraints.append((a, b, least, most))
    return events, constraints


def sides(constraints):
    """{(constraint, "least" or "most"): (from, to, length)} of the graph of distances."""
    out = {}
    for i, (a, b, least, most) in enumerate(constraints):
        if most is not None:
            out[i, "most"] = (a, b, most)
        if least is not None:
            out[i, "least"] = (b, a, -least)
    return out


def graph_of(events, edges):
    graph = networkx.DiGraph()
    graph.add_nodes_from(range(events))
    for a, b, length in edges:
        if a != b and (not graph.has_edge(a, b) or graph[a][b]["weight"] > length):
            graph.add_edge(a, b, weight=length)
    return graph


def shortest_negative_cycle(graph, most):
    """Number of edges of the shortest negative cycle with at most so many."""
    for cycle in sorted(networkx.simple_cycles(graph), key=len):
        if len(cycle) > most:
            return None
        if sum(graph[a][b]["weight"] for a, b in zip(cycle, cycle[1:] + cycle[:1])) < 0:
            return len(cycle)
    return None


def judge_cycle(events, constraints, words):
    told = [(int(number), side) for number, side in zip(words[::2], words[1::2])]
    edges = [sides(constraints)[side] for side in told]
    if any(edge[1] != following[0] for edge, following in zip(edges, edges[1:] + edges[:1])):
        return "the sides told do not follow on each other"
    if sum(edge[2] for edge in edges) >= 0:
        return "the cycle told can be kept"
    # Enumerating all cycles is for small graphs only.
    if events <= 7 and len(edges) > 1:
        all_edges = sides(constraints).values()
        shortest = 1 if any(a == b and length < 0 for a, b, length in all_edges) else \
            shortest_negative_cycle(graph_of(events, all_edges), len(edges))
        if shortest != len(edges):
            return f"the cycle told has {len(edges)} sides, there is one of {shortest}"
    return None


def judge_windows(events, constraints, words):
    distance = networkx.floyd_warshall(graph_of(events, sides(constraints).values()))
    told = iter(words)
    for a in range(events):
        for b in range(events):
            least, most = next(told), next(told)
            expected = distance[a][b], -distance[b][a]
            given = (float("inf") if most == "-" else int(most)), (-float("inf") if least == "-" else int(least))
            if given != expected:
                return f"from {a} to {b}: {given}, NetworkX says {expected}"
    return None


def main():
    dice = random.Random(SEED)
    networks = [some_network(dice) for _ in range(NETWORKS)]
    end = lambda time: "-" if time is None else str(time)
    questions = "".join(
        " ".join([str(events), *(f"{a} {b} {end(least)} {end(most)}" for a, b, least, most in constraints)]) + "\n"
        for events, constraints in networks)
    answers = subprocess.run([sys.argv[1]], input=questions, capture_output=True, text=True, check=True).stdout
    lines = answers.splitlines()
    if len(lines) != NETWORKS:
        sys.exit(f"{NETWORKS} networks, {len(lines)} answers")
    counts = {"windows": 0, "cycle": 0}
    wrong = 0
    for (events, constraints), line in zip(networks, lines):
        word, *words = line.split()
        counts[word] += 1
        edges = list(sides(constraints).values())
        impossible = any(a == b and length < 0 for a, b, length in edges) or \
            networkx.negative_edge_cycle(graph_of(events, edges))
        if impossible != (word == "cycle"):
            fault = f"says {word}, NetworkX says {'cycle' if impossible else 'windows'}"
        else:
            fault = (judge_cycle if word == "cycle" else judge_windows)(events, constraints, words)
        if fault:
            wrong += 1
            print(f"{fault}: {events} {constraints}")
    print(f"{counts['windows']} networks that can be kept, {counts['cycle']} that cannot, {wrong} judged wrongly")
    sys.exit(1 if wrong or min(counts.values()) < NETWORKS // 5 else 0)


main()
