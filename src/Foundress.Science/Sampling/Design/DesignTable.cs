namespace Foundress.Science.Sampling;

/// <summary>What 3, 5, 8, 12 and all colonies buy, for each purpose side by side.</summary>
public static class DesignTable
{
    private static readonly int[] UsualSizes = [3, 5, 8, 12];

    /// <summary>The table for the usual sizes.</summary>
    /// <param name="question">What the round is to do.</param>
    public static IReadOnlyList<DesignRow> Of(DesignQuestion question) => Of(question, UsualSizes);

    /// <summary>The table for given sizes: those below the number of colonies, in order and each once, and then all colonies.</summary>
    /// <param name="question">What the round is to do.</param>
    /// <param name="sizes">Numbers of colonies, at least 1 each.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is below 1.</exception>
    public static IReadOnlyList<DesignRow> Of(DesignQuestion question, IReadOnlyList<int> sizes)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(sizes);
        foreach (int size in sizes)
        {
            if (size < 1)
                throw new ArgumentOutOfRangeException(nameof(sizes), size, "A sample takes at least one colony.");
        }

        return [.. sizes.Where(size => size < question.Colonies).Append(question.Colonies).Distinct().Order().Select(size => Row(question, size))];
    }

    private static DesignRow Row(DesignQuestion question, int take)
    {
        SamplingPlan plan = new(new(take, question.Colonies), question.JarsPerColony, question.BeesPerJar);
        return new(
            plan,
            PlanPrecision.RelativeError(plan, question.Line, question.Shape),
            ColonyDetection.ChanceOfSome(plan.Sample, question.ColoniesOver),
            PlanDecision.ChanceOfError(plan, question.Harmless, question.Shape, question.Line),
            PlanDecision.ChanceOfError(plan, question.Harmful, question.Shape, question.Line));
    }
}
