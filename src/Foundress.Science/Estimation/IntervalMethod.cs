namespace Foundress.Science.Estimation;

/// <summary>How an interval around a level was made.</summary>
public enum IntervalMethod
{
    /// <summary>Exact limits of a Poisson mean (Garwood 1936): mites as an intensity. Covers at least its confidence.</summary>
    ExactPoisson,

    /// <summary>Score interval of a proportion (Wilson 1927): each bee has a mite or has none.</summary>
    Wilson,

    /// <summary>Exact limits of a proportion (Clopper &amp; Pearson 1934): each bee has a mite or has none.</summary>
    ClopperPearson,

    /// <summary>Equal-tailed limits of the posterior with Jeffreys' prior; the only one that carries an uncertain bee count.</summary>
    Posterior,
}
