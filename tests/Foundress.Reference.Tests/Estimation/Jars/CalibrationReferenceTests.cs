using System.Globalization;
using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation.Jars;

/// <summary>Against the same posterior summed over a dense grid in R (Tables/calibration.tsv, made by Tables/make-design.R).</summary>
public class CalibrationReferenceTests
{
    [Fact]
    public void From_EveryRowOfTheTable_AgreesWithTheGrid()
    {
        ReferenceTable table = ReferenceTable.Read("calibration.tsv");
        Assert.Equal(8, table.Rows.Count);
        foreach (string[] row in table.Rows)
        {
            JarPrior prior = new(table.Number(row, "bees"), table.Number(row, "logSpread"), table.Number(row, "jarsForMean"), table.Number(row, "jarsForSpread"));
            int[] counted = [.. table.Text(row, "counted").Split(',').Select(text => int.Parse(text, CultureInfo.InvariantCulture))];
            JarCalibration calibration = JarCalibration.From(prior, counted);

            // The grid's cells are 0.002 wide in ln bees: its chances are good to about 1e-4.
            double usual = table.Number(row, "usualAtMost310");
            Assert.Equal(310d, calibration.UsualBeesQuantile(usual), 0.1);
            Assert.Equal(0.14, calibration.LogSpreadQuantile(table.Number(row, "spreadAtMost014")), 0.0005);
            Assert.Equal(table.Number(row, "nextAtMost280"), calibration.ChanceNextJarAtMost(280d).Value, 2e-4);
        }
    }
}
