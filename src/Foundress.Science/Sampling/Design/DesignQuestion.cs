namespace Foundress.Science.Sampling;

/// <summary>What a keeper wants a round of sampling to do; the figures are the keeper's or data.</summary>
public sealed record DesignQuestion
{
    /// <summary>A question.</summary>
    /// <param name="colonies">Colonies in the apiary, at least 1.</param>
    /// <param name="jarsPerColony">Jars taken in each sampled colony, at least 1.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1.</param>
    /// <param name="line">The line the apiary is judged by, above 0.</param>
    /// <param name="harmless">A level at which a control would be wasted, not above the line.</param>
    /// <param name="harmful">A level at which waiting does harm, above the line.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0: from a pilot round or earlier rounds.</param>
    /// <param name="coloniesOver">Fewest colonies over the line that must not be missed, 1 to all.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public DesignQuestion(int colonies, int jarsPerColony, int beesPerJar, MiteLevel line, MiteLevel harmless, MiteLevel harmful, double shape, int coloniesOver)
    {
        if (colonies < 1)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, "There is at least one colony.");
        SamplingPlan.CheckShape(shape);
        if (!(line.PerBee > 0d) || harmless > line)
            throw new ArgumentOutOfRangeException(nameof(line), line, $"The line lies above 0 and not below the harmless level, {harmless}.");
        if (harmful <= line)
            throw new ArgumentOutOfRangeException(nameof(harmful), harmful, $"The harmful level lies above the line, {line}.");
        if (coloniesOver < 1 || coloniesOver > colonies)
            throw new ArgumentOutOfRangeException(nameof(coloniesOver), coloniesOver, $"Between 1 and {colonies} colonies can be over the line.");
        _ = new SamplingPlan(new(1, colonies), jarsPerColony, beesPerJar);
        (Colonies, JarsPerColony, BeesPerJar, Line, Harmless, Harmful, Shape, ColoniesOver) =
            (colonies, jarsPerColony, beesPerJar, line, harmless, harmful, shape, coloniesOver);
    }

    /// <summary>Colonies in the apiary.</summary>
    public int Colonies { get; }

    /// <summary>Jars taken in each sampled colony.</summary>
    public int JarsPerColony { get; }

    /// <summary>Bees in a jar.</summary>
    public int BeesPerJar { get; }

    /// <summary>The line the apiary is judged by.</summary>
    public MiteLevel Line { get; }

    /// <summary>A level at which a control would be wasted.</summary>
    public MiteLevel Harmless { get; }

    /// <summary>A level at which waiting does harm.</summary>
    public MiteLevel Harmful { get; }

    /// <summary>Shape k of the spread between colonies.</summary>
    public double Shape { get; }

    /// <summary>Fewest colonies over the line that must not be missed.</summary>
    public int ColoniesOver { get; }
}
