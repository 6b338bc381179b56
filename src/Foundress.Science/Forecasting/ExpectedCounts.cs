using Foundress.Science.Dynamics;

namespace Foundress.Science.Forecasting;

/// <summary>The mean count that each particle foretells.</summary>
internal static class ExpectedCounts
{
    internal static void Fill(Evidence evidence, MiteEnsemble ensemble, ColonyDays days, Span<float> means)
    {
        switch (evidence.Kind)
        {
            case EvidenceKind.Jar:
                MiteRun.Loads(ensemble, days, means);
                break;
            case EvidenceKind.Fall:
                for (int i = 0; i < means.Length; i++)
                    means[i] = (float)(ensemble.OnAdults[i] + ensemble.InWorkerCells(i) + ensemble.InDroneCells(i));
                break;
            default:
                Infested(ensemble, days, means);
                break;
        }

        for (int i = 0; i < means.Length; i++)
            means[i] *= (float)evidence.Base;
    }

    // Mothers per cell over all sealed worker cells; of cells with mothers spread by the geometric law, so many are infested.
    private static void Infested(MiteEnsemble ensemble, ColonyDays days, Span<float> means)
    {
        double cells = 0d;
        for (int age = 1; age <= MiteBiology.WorkerSealedDays; age++)
            cells += days.Bees.WorkerSealed[Math.Clamp(ensemble.Day - age, 0, days.Days - 1)];
        for (int i = 0; i < means.Length; i++)
        {
            double mothers = ensemble.InWorkerCells(i) / Math.Max(cells * ensemble.BroodScale[i], 1d);
            means[i] = (float)(mothers / (1d + mothers));
        }
    }
}
