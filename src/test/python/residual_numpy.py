"""The residuals of models/ridge-relay.yaml at 400 points as an engineer would write them with NumPy.

A peer for speed and a second road for the figures: the numbers are copied from the model by hand, the equations are
those of D A = E in absolute motion. Usage: python3 residual_numpy.py [response.csv]; with the table of `assess` it also
prints the largest relative difference. Needs NumPy (Debian: python3-numpy).
"""
import sys
import numpy as np

f = np.geomspace(10, 2000, 400)
w = 2 * np.pi * f
s = 1j * w
G = np.array([.22, .35, .48])                      # x .35, y -.22, z .48 turned 90 deg about z
m, a, b, c = .21, .062, .062, .024
M = np.diag([m, m, m, m/12*(b*b+c*c), m/12*(a*a+c*c), m/12*(a*a+b*b)])
cg = np.array([.0003, -.0002, .0004])


def lever(p):
    x, y, z = np.asarray(p) - cg
    return np.array([[1, 0, 0, 0, z, -y], [0, 1, 0, -z, 0, x], [0, 0, 1, y, -x, 0]], float)


T = np.vstack([np.eye(3), np.zeros((3, 3))])
D = -w[:, None, None]**2 * M + 0j
E = np.zeros((f.size, 6, 3), complex)
k = np.array([16e3, 16e3, 17e3]) * (1 + .28j)
line = w[:, None] * np.sqrt(.6e-3 / k)
direct = k * line / np.tan(line) + 4 * s[:, None]
carried = k * line / np.sin(line) + 4 * s[:, None]
for sx, sy in ((1, 1), (-1, 1), (-1, -1), (1, -1)):
    B = lever([sx*.024, sy*.024, 0])
    D += np.einsum('ki,nk,kj->nij', B, direct, B)
    E += np.einsum('ki,nk,kj->nij', B, carried, np.eye(3))
A = np.linalg.solve(D, E)
r = f / 6200
H = (1 + 1j*r/40) / (1 - r**2 + 1j*r/40)
crystal = lever([0, 0, .003]) @ A
X = np.full((3, 3), .005) + .995*np.eye(3)
sensed = X @ (lever([.004, .003, .004]) @ A)
fs = 1e5
back = np.exp(-s/fs)
q = f / 22000
path = (1/(1 + 1j*f/6000) / (1 - q**2 + 1j*q/3) * (1/(1 - .3j/f)) / (1 + 1j*f/20000) * (2.3 - 1.3*back)
        * (1 - back)/(s/fs) * np.exp(-s*8e-6) / (1 + 1j*f/40000) * np.exp(-1j*np.deg2rad(.5)) * np.exp(-s*2e-6))
P = path[:, None] * np.array([1.01, 1.01, .99])
bare = H[:, None] * G
isolated = H[:, None] * np.einsum('i,nij->nj', G, crystal)
cancelled = bare - np.einsum('i,ni,ij->nj', G, P, X)
combined = isolated - np.einsum('i,ni,nij->nj', G, P, sensed)
stacks = np.abs(np.hstack([bare, isolated, cancelled, combined]))
print('worst combined', stacks[:, 9:].max(), 'ppb/g')
if len(sys.argv) > 1:
    table = np.loadtxt(sys.argv[1], delimiter=',', skiprows=1)
    ours = table[:, [1, 2, 3, 5, 6, 7, 9, 10, 11, 13, 14, 15]]
    print('largest relative difference', np.max(np.abs(ours/stacks - 1)))
