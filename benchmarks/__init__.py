"""Speed, as ratios within one run: how long something takes against a floor that does the same on the same machine.

Run each by its name, such as python -m benchmarks.build. Figures are the best of several runs, since a busy machine only ever adds.
"""
