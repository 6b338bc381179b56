using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>
/// What the counts of an apiary's colonies teach about each other: a colony never sampled borrows from its neighbours, and
/// one jar among many is held less sure of itself.
/// </summary>
/// <remarks>
/// One round of expectation propagation (Minka 2001) with independent normal distributions: each colony's counts are turned
/// into a normal likelihood for each of its quantities by a short run of the filter; the apiary's means are learnt from them;
/// each colony's belief then comes from all the others. How far levels differ within the apiary is learnt too, on a grid.
/// Immutable; safe for concurrent use.
/// </remarks>
public sealed class ApiaryBelief
{
    // What a short run shows by chance alone is not passed on.
    private const double LeastGain = 0.15;

    private static readonly double[] SpreadFactors = [0.4, 0.6, 0.8, 1d, 1.3, 1.7];

    private readonly ForecastPriors _priors;
    private readonly Dictionary<string, List<Site>> _sites = new(StringComparer.Ordinal);
    private readonly double _startOwn;

    private ApiaryBelief(ForecastPriors priors, IReadOnlyList<ColonyHistory> histories, List<(int Colony, ColonyBelief Before, ColonyBelief After)> learnt)
    {
        _priors = priors;
        foreach (var (colony, before, after) in learnt)
        {
            for (int quantity = 0; quantity < before.Count; quantity++)
                Add(colony, Name(histories[colony], quantity), before, after, quantity);
        }

        _startOwn = priors.StartColonySpread * priors.StartColonySpread * LearntFactor();
    }

    /// <summary>Learns from the counts of the colonies up to a day.</summary>
    /// <param name="histories">The colonies of one apiary, with or without counts; their starts are the same calendar day.</param>
    /// <param name="priors">The figures of counting and differing.</param>
    /// <param name="untils">For each colony the day of its course up to which counts are used.</param>
    /// <param name="scout">A filter for the short runs; a sixth to a quarter of the particles of the forecast will do.</param>
    /// <param name="seed">Seed of everything drawn.</param>
    /// <exception cref="ArgumentException">The numbers of colonies and days differ.</exception>
    public static ApiaryBelief Learn(IReadOnlyList<ColonyHistory> histories, ForecastPriors priors, IReadOnlyList<int> untils, ColonyFilter scout, ulong seed)
    {
        if (histories.Count != untils.Count)
            throw new ArgumentException($"{histories.Count} colonies are given, but {untils.Count} days.", nameof(untils));
        List<(int, ColonyBelief, ColonyBelief)> learnt = [];
        for (int colony = 0; histories.Count > 1 && colony < histories.Count; colony++)
        {
            int last = LastCount(histories[colony], untils[colony]);
            if (last < 0)
                continue;
            ColonyBelief before = ColonyBelief.Before(histories[colony], priors);
            scout.Run(histories[colony], before, priors, last, unchecked(seed + ((ulong)colony * 0x9E3779B97F4A7C15UL)));
            learnt.Add((colony, before, scout.Posterior()));
        }

        return new(priors, histories, learnt);
    }

    /// <summary>What is believed of a colony before its own counts, from those of the others.</summary>
    /// <param name="history">The colony.</param>
    /// <param name="colony">Its place among the colonies learnt from; -1 for one that was not among them.</param>
    public ColonyBelief For(ColonyHistory history, int colony)
    {
        ColonyBelief belief = ColonyBelief.Before(history, _priors);
        for (int quantity = 0; quantity < belief.Count; quantity++)
        {
            double shared = ColonyBelief.Shared(quantity, _priors);
            if (shared == 0d || !_sites.TryGetValue(Name(history, quantity), out List<Site>? sites))
                continue;
            double own = quantity == Quantity.Start ? _startOwn : ColonyBelief.Own(quantity, history.Days, _priors);
            double precision = 1d / shared;
            double weighted = belief.Mean[quantity] / shared;
            foreach (Site site in sites)
            {
                if (site.Colony == colony)
                    continue;
                double gain = 1d / (own + site.Variance);
                precision += gain;
                weighted += gain * site.Mean;
            }

            belief.Mean[quantity] = weighted / precision;
            belief.Variance[quantity] = (1d / precision) + own;
        }

        return belief;
    }

    private static string Name(ColonyHistory history, int quantity) =>
        quantity < Quantity.FirstControl
            ? ((char)('0' + quantity)).ToString()
            : "control " + history.ControlKeys[quantity - Quantity.FirstControl];

    private static int LastCount(ColonyHistory history, int until)
    {
        int last = -1;
        foreach (Evidence one in history.Evidence)
        {
            if (one.Day <= until)
                last = one.Day;
        }

        return last;
    }

    private void Add(int colony, string name, ColonyBelief before, ColonyBelief after, int quantity)
    {
        double prior = 1d / before.Variance[quantity];
        double gain = (1d / Math.Max(after.Variance[quantity], 1e-9)) - prior;
        if (gain < LeastGain * prior)
            return;
        double mean = ((after.Mean[quantity] / after.Variance[quantity]) - (before.Mean[quantity] * prior)) / gain;
        if (!_sites.TryGetValue(name, out List<Site>? sites))
            _sites[name] = sites = [];
        sites.Add(new Site(colony, mean, 1d / gain));
    }

    // How far the levels of the apiary's colonies differ: the mean of the factors weighted by how well each explains them.
    private double LearntFactor()
    {
        if (!_sites.TryGetValue("0", out List<Site>? sites) || sites.Count < 3)
            return 1d;
        double usual = _priors.StartColonySpread * _priors.StartColonySpread;
        double total = 0d;
        double sum = 0d;
        double best = double.NegativeInfinity;
        double[] logs = new double[SpreadFactors.Length];
        for (int i = 0; i < SpreadFactors.Length; i++)
        {
            // The factors stand for a lognormal prior about 1; the apiary's mean is taken out of the fit as unknown.
            double away = PortableFunctions.Log(SpreadFactors[i]) / 0.5;
            logs[i] = Fit(sites, usual * SpreadFactors[i] * SpreadFactors[i]) - (0.5 * away * away);
            best = Math.Max(best, logs[i]);
        }

        for (int i = 0; i < SpreadFactors.Length; i++)
        {
            double weight = PortableFunctions.Exp(logs[i] - best);
            total += weight;
            sum += weight * SpreadFactors[i] * SpreadFactors[i];
        }

        return sum / total;
    }

    private static double Fit(List<Site> sites, double own)
    {
        double precision = 0d;
        double weighted = 0d;
        double log = 0d;
        foreach (Site site in sites)
        {
            double gain = 1d / (own + site.Variance);
            precision += gain;
            weighted += gain * site.Mean;
            log += 0.5 * PortableFunctions.Log(gain);
        }

        double mean = weighted / precision;
        foreach (Site site in sites)
            log -= 0.5 * (site.Mean - mean) * (site.Mean - mean) / (own + site.Variance);
        return log - (0.5 * PortableFunctions.Log(precision));
    }

    private readonly record struct Site(int Colony, double Mean, double Variance);
}
