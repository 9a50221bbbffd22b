"""Makes gamma.json: laws and fits of the gamma and generalised gamma families, apart from the Java code.

Likelihood with 40 digits (mpmath), derivatives by central differences with step 1e-12 at those digits, Newton's method.
Run in this folder: python3 gamma.py
"""
import json
from mpmath import mp, mpf, log, exp, gammainc, loggamma, ncdf, matrix, lu_solve, inverse, sqrt, pi

mp.dps = 40

def law(family, q):
    """log survival and log density of W"""
    if family == 'gamma':
        a = exp(q)
        return (lambda z: log(gammainc(a, exp(z), regularized=True)), lambda z: a * z - exp(z) - loggamma(a))
    if q == 0:
        return (lambda z: log(ncdf(-z)), lambda z: -z * z / 2 - log(2 * pi) / 2)
    a = 1 / (q * q)
    if q > 0:
        s = lambda z: log(gammainc(a, a * exp(q * z), regularized=True))
    else:
        s = lambda z: log(gammainc(a, 0, a * exp(q * z), regularized=True))
    return (s, lambda z: log(abs(q)) + a * log(a) + a * (q * z - exp(q * z)) - loggamma(a))

def loglik(family, theta, rows, p):
    q = theta[-1]
    S, f = law(family, q)
    k = theta[p + 1] if family == 'generalised_gamma' else mpf(0)
    total = mpf(0)
    for e, l, u, w, x in rows:
        m = theta[0] + sum(theta[1 + j] * x[j] for j in range(p))
        z = lambda t: exp(k) * (log(t) - m)
        if l == u:
            value = f(z(l)) + k - log(l)
        else:
            value = log((mpf(1) if l == 0 else exp(S(z(l)))) - (mpf(0) if u is None else exp(S(z(u)))))
        if e > 0:
            value -= S(z(e))
        total += w * value
    return total

def derivatives(g, theta):
    n, h = len(theta), mpf(10) ** -12
    at = lambda d: g([theta[i] + d.get(i, 0) for i in range(n)])
    centre = at({})
    plus, minus = [at({i: h}) for i in range(n)], [at({i: -h}) for i in range(n)]
    grad = matrix([(plus[i] - minus[i]) / (2 * h) for i in range(n)])
    hess = matrix(n, n)
    for i in range(n):
        hess[i, i] = (plus[i] - 2 * centre + minus[i]) / h ** 2
        for j in range(i):
            both = at({i: h, j: h}) - plus[i] - plus[j] + 2 * centre - minus[i] - minus[j] + at({i: -h, j: -h})
            hess[i, j] = hess[j, i] = both / (2 * h * h)
    return centre, grad, hess

def fit(family, rows, start):
    p = len(rows[0][4])
    theta = [mpf(t) for t in start]
    g = lambda th: loglik(family, th, rows, p)
    for _ in range(60):
        value, grad, hess = derivatives(g, theta)
        step = lu_solve(hess, -grad)
        if sum(step[i] * grad[i] for i in range(len(theta))) < 0:
            step = grad / max(abs(grad[i]) for i in range(len(theta))) / 10
        longest = max(abs(s) for s in step)
        step = step * (mpf('0.5') / longest if longest > 0.5 else 1)
        length = mpf(1)
        while not (g([t + length * s for t, s in zip(theta, step)]).real >= value - mpf(10) ** -25):
            length /= 2
        theta = [t + length * s for t, s in zip(theta, step)]
        if longest < mpf(10) ** -12:
            break
    value, grad, hess = derivatives(g, theta)
    cov = inverse(-hess)
    return {'family': family, 'coef': [float(t) for t in theta],
            'se': [float(sqrt(cov[i, i])) for i in range(len(theta))], 'loglik': float(value)}

def lives(case):
    d = case['data']
    n = len(next(iter(d.values())))
    w = d.get('n', [1] * n)
    e = d.get('entry', [0] * n)
    if 'left' in d:
        l, u = d['left'], d['right']
    else:
        l = d['time']
        u = [t if s else None for t, s in zip(d['time'], d['status'])]
    conv = lambda v: None if v is None else mpf(str(v))
    return [(conv(e[i]), conv(l[i]), conv(u[i]), w[i]) for i in range(n)]

if __name__ == '__main__':
    plain = {c['id']: c for c in json.load(open('../survival/parametric.json'))['cases']}
    aft = {c['id']: c for c in json.load(open('aft.json'))['cases']}
    out = {'what': 'Gamma and generalised gamma: laws of W at points, and maximum likelihood fits; coef = location and '
                   'slopes, then log shape (generalised gamma), then the parameter of the law (log alpha, or q)',
           'computed': 'gamma.py in this folder: mpmath at 40 digits, independent of the Java code', 'laws': [], 'fits': []}
    for family, qs in (('gamma', ['-3', '-0.5', '0', '1.7', '5', '9']),
                       ('generalised_gamma', ['-2', '-0.3', '-0.01', '-0.003', '0', '0.001', '0.0039', '0.05', '0.7', '1', '3'])):
        for q in qs:
            for z in ('-30', '-6', '-1.5', '-0.2', '0', '0.4', '1.3', '3', '5', '8'):
                S, f = law(family, mpf(q))
                s = S(mpf(z)) if q not in ('0.001', '-0.003', '0.0039') or abs(mpf(z)) <= 8 else None
                d = f(mpf(z))
                if s is not None and s > -10000:
                    out['laws'].append({'family': family, 'q': float(q), 'z': float(z), 'logS': float(s), 'logf': float(d)})
    for case, gamma, generalised in (('par-lung-null', [6, 0.3], [6, 0.2, 0.8]), ('par-bcos-rt', [4, 0.2], [4, 0.2, 0.8]),
                             ('par-lt-ic-constructed', [7, 1.2], [7.8, 0.8, 0.8]), ('par-nist-8413', [5.6, 0.8], None)):
        rows = [r + ([],) for r in lives(plain[case])]
        out['fits'].append(dict(case=case, **fit('gamma', rows, gamma)))
        if generalised:
            out['fits'].append(dict(case=case, **fit('generalised_gamma', rows, generalised)))
        print(out['fits'][-1], flush=True)
    case = aft['aft-larynx']
    age = [mpf(str(a)) for a in case['data']['age']]
    stage4 = [mpf(int(s == 4)) for s in case['data']['stage']]
    rows = [r + ([s, a],) for r, s, a in zip(lives(case), stage4, age)]
    out['fits'].append(dict(case='aft-larynx', **fit('gamma', rows, [3, -1, -0.02, 0])))
    print(out['fits'][-1])
    with open('gamma.json', 'w') as file:
        file.write('{\n' + ',\n'.join(' %s: %s' % (json.dumps(k), json.dumps(out[k])) for k in ('what', 'computed')))
        for k in ('laws', 'fits'):
            file.write(',\n "%s": [\n' % k + ',\n'.join('  ' + json.dumps(r) for r in out[k]) + '\n ]')
        file.write('\n}\n')
