using System.Globalization;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation;

/// <summary>Against SciPy's incomplete gamma functions and adaptive quadrature (Tables/posterior.tsv, made by Tables/make-posterior.py).</summary>
public class LevelPosteriorReferenceTests
{
    private static readonly ReferenceTable Table = ReferenceTable.Read("posterior.tsv");

    [Fact]
    public void Posterior_CountedBees_AgreesTo1e12()
    {
        var agreement = new Agreement(1e-12);
        foreach (string[] row in Table.Rows.Where(row => Jars(row).All(jar => jar.Bees.LogSpread == 0d)))
            Check(agreement, row);
        agreement.AssertAll(500);
    }

    [Fact]
    public void Posterior_OneJarOfUncertainBees_AgreesTo1e9()
    {
        var agreement = new Agreement(1e-9);
        foreach (string[] row in Table.Rows.Where(row => Jars(row) is [{ Bees.LogSpread: > 0d }]))
            Check(agreement, row);
        agreement.AssertAll(400);
    }

    [Fact]
    public void Posterior_SeveralJarsSomeUncertain_AgreesTo1e9()
    {
        var agreement = new Agreement(1e-9);
        foreach (string[] row in Table.Rows.Where(row => Jars(row) is { Length: > 1 } jars && jars.Any(jar => jar.Bees.LogSpread > 0d)))
            Check(agreement, row);
        agreement.AssertAll(40);
    }

    private static void Check(Agreement agreement, string[] row)
    {
        LevelPosterior posterior = LevelPosterior.FromJars(Jars(row));
        double at = Table.Number(row, "at");
        double actual = Table.Text(row, "kind") switch
        {
            "over" => posterior.ChanceOver(MiteLevel.FromPerBee(at)).Value,
            "quantile" => posterior.Quantile(at).PerBee,
            "mean" => posterior.Mean.PerBee,
            string other => throw new InvalidOperationException($"The table has a row of kind '{other}', which this test does not know."),
        };
        agreement.Check(Table.Number(row, "value"), actual, string.Join(' ', row[..3]));
    }

    private static JarCount[] Jars(string[] row) => [.. Table.Text(row, "jars").Split(',').Select(Jar)];

    private static JarCount Jar(string text)
    {
        string[] parts = text.Split(':');
        double Number(int i) => double.Parse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture);
        BeeCount bees = Number(2) == 0d ? BeeCount.Counted((int)Number(1)) : BeeCount.Uncertain(BeeBasis.Assumed, Number(1), Number(2));
        return new((int)Number(0), bees, Number(3));
    }
}
