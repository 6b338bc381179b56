using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Foundress.Science.Numerics;

namespace Foundress.Book.Forecasting;

/// <summary>Gathers the files of a batch and foretells its jars apiary by apiary. A bad row stops nothing else: it is named.</summary>
/// <remarks>Reading is not safe for concurrent use; once everything is read, apiaries may be foretold side by side.</remarks>
public sealed class ForecastBatch
{
    // A batch may be a record of old or a plan far ahead; only a slip of the century is refused.
    private static readonly DateOnly Latest = new(2099, 12, 31);

    private readonly KnowledgeBase _knowledge;
    private readonly Dictionary<string, BatchApiary> _apiaries = new(StringComparer.Ordinal);
    private readonly List<BatchProblem> _problems = [];
    private readonly List<BatchTarget> _targets = [];

    /// <summary>An empty batch.</summary>
    public ForecastBatch(KnowledgeBase knowledge) => _knowledge = knowledge;

    /// <summary>Rows that were not taken, so far.</summary>
    public IReadOnlyList<BatchProblem> Problems => _problems;

    /// <summary>The jars to foretell, in the order of their file.</summary>
    public IReadOnlyList<BatchTarget> Targets => _targets;

    /// <summary>Number of jars taken.</summary>
    public int Jars { get; private set; }

    /// <summary>Keys of the apiaries in which jars are to be foretold, in an order that does not depend on the files'.</summary>
    public IReadOnlyList<string> ApiaryKeys => [.. _apiaries.Where(pair => pair.Value.Targets.Count > 0).Select(pair => pair.Key).Order(StringComparer.Ordinal)];

    /// <summary>Reads jars. Read them first.</summary>
    /// <exception cref="ImportFormatException">It is not a CSV file of jars.</exception>
    public IReadOnlyList<string> ReadJars(Stream csv)
    {
        var empty = new Ledger();
        var import = JarImport.Open(csv, empty, Operations.Home, JarImportRules.From(_knowledge, empty.State.Policy, Latest));
        var apiaries = new Dictionary<ApiaryId, string>();
        var colonies = new Dictionary<ColonyId, (string Apiary, string Colony)>();
        foreach (var row in import.Rows())
        {
            if (row is RejectedRow bad)
            {
                foreach (var problem in bad.Problems)
                    _problems.Add(new("jars", bad.Row, problem));
                continue;
            }

            foreach (var one in ((AcceptedRow)row).Records)
            {
                if (one.Record is ApiaryRecord apiary)
                    apiaries[apiary.Apiary] = apiary.Name!;
                else if (one.Record is ColonyRecord colony)
                    colonies[colony.Colony] = (apiaries[colony.Apiary!.Value], colony.Name!);
                else if (one.Record is JarRecord jar)
                    Take(jar, colonies[jar.Colony!.Value]);
            }
        }

        return import.UnknownColumns;
    }

    /// <summary>Reads where apiaries stand.</summary>
    /// <exception cref="ImportFormatException">It is not a CSV file of sites.</exception>
    public IReadOnlyList<string> ReadSites(Stream csv) => Read("sites", csv, TableColumns.Sites, row =>
    {
        var name = row.Name("apiary");
        var latitude = row.Number("latitude", -90, 90);
        row.Number("longitude", -180, 180);
        var altitude = row.OptionalNumber("altitude", -430, 6000);
        if (row.Problems.Count > 0)
            return;
        var apiary = Apiary(name);
        if (apiary.Latitude is not null && (apiary.Latitude, apiary.Altitude) != (latitude, altitude))
            row.Check("apiary", TableTexts.SiteTwice);
        else
            (apiary.Latitude, apiary.Altitude) = (latitude, altitude);
    });

    /// <summary>Reads inspections.</summary>
    /// <exception cref="ImportFormatException">It is not a CSV file of inspections.</exception>
    public IReadOnlyList<string> ReadInspections(Stream csv) => Read("inspections", csv, TableColumns.Inspections, row =>
    {
        var (apiary, colony, day) = (row.Name("apiary"), row.Name("colony"), row.Day("date", Latest));
        var bees = row.OptionalNumber("frames_of_bees", 0, 100);
        var brood = row.OptionalNumber("frames_of_brood", 0, 100);
        if (bees is null && brood is null)
            row.Check(string.Empty, TableTexts.NoFrames);
        if (row.Problems.Count == 0)
            Apiary(apiary).Colony(colony).Inspections.Add(new(day, bees, brood));
    });

    /// <summary>Reads controls; an empty colony means every colony of the apiary.</summary>
    /// <exception cref="ImportFormatException">It is not a CSV file of controls.</exception>
    public IReadOnlyList<string> ReadControls(Stream csv) => Read("controls", csv, TableColumns.Controls, row =>
    {
        var (apiary, start) = (row.Name("apiary"), row.Day("start", Latest));
        var end = row.Text("end").Length == 0 ? start : row.Day("end", Latest);
        var colony = row.Text("colony");
        if (colony.Length > 0)
            row.Name("colony");
        var agents = _knowledge.Controls.Named(row.Text("agent"));
        if (agents.Count == 0)
            row.Check("agent", TableTexts.FormatControlUnknown(string.Join(", ", _knowledge.Controls.Agents.Ids)));
        if (row.Problems.Count == 0 && end < start)
            row.Check("end", TableTexts.EndBeforeStart);
        if (row.Problems.Count > 0)
            return;
        var control = new ForecastControl(ControlChoice.Of(agents, end.DayNumber - start.DayNumber), start, end);
        if (colony.Length == 0)
            Apiary(apiary).Controls.Add(control);
        else
            Apiary(apiary).Colony(colony).Controls.Add(control);
    });

    /// <summary>Reads the jars to foretell. Read them last.</summary>
    /// <exception cref="ImportFormatException">It is not a CSV file of targets.</exception>
    public IReadOnlyList<string> ReadTargets(Stream csv) => Read("targets", csv, TableColumns.Targets, row =>
    {
        var (apiary, colony, day) = (row.Name("apiary"), row.Name("colony"), row.Day("date", Latest));
        row.Check("bees", BeesField.Read(row.Text("bees"), Science.BeeBasis.Weighed, decimalComma: false, out var bees));
        if (row.Problems.Count == 0 && Apiary(apiary).Latitude is null)
            row.Check("apiary", TableTexts.SiteMissing);
        if (row.Problems.Count > 0)
            return;
        var target = new BatchTarget(row.Row, apiary, colony, day, (int)Math.Round(bees));
        _targets.Add(target);
        Apiary(apiary).Colony(colony);
        Apiary(apiary).Targets.Add((NameField.Key(colony), target));
    });

    /// <summary>Foretells the jars of one apiary.</summary>
    /// <param name="key">One of <see cref="ApiaryKeys"/>.</param>
    /// <param name="forecast">The forecast to use.</param>
    /// <param name="seed">Seed of the whole batch; each apiary gets its own from it.</param>
    public IReadOnlyList<(BatchTarget Target, JarForecast Forecast)> Foretell(string key, ApiaryForecast forecast, ulong seed)
    {
        var apiary = _apiaries[key];
        var (keys, colonies) = apiary.Done();
        JarWish[] wishes = [.. apiary.Targets.Select(target => new JarWish(Array.BinarySearch(keys, target.ColonyKey, StringComparer.Ordinal), target.Target.On, target.Target.Bees))];
        var found = forecast.Foretell(new HistoryBuilder(_knowledge, apiary.Latitude!.Value, apiary.Altitude), colonies, wishes, SeededGenerator.ForPart(seed, key).NextUInt64());
        return [.. apiary.Targets.Select((target, i) => (target.Target, found[i]))];
    }

    private void Take(JarRecord jar, (string Apiary, string Colony) place)
    {
        Apiary(place.Apiary).Colony(place.Colony).Jars.Add(new(jar.On, jar.Method, jar.Mites, jar.Bees.AsBeeCount));
        Jars++;
    }

    private BatchApiary Apiary(string name)
    {
        var key = NameField.Key(name);
        if (!_apiaries.TryGetValue(key, out var apiary))
            _apiaries[key] = apiary = new BatchApiary(name.Trim());
        return apiary;
    }

    private IReadOnlyList<string> Read(string file, Stream csv, TableColumns columns, Action<TableRow> take)
    {
        var table = TableFile.Open(csv, columns);
        foreach (var row in table.Rows())
        {
            if (row.Problems.Count == 0)
                take(row);
            foreach (var problem in row.Problems)
                _problems.Add(new(file, row.Row, problem));
        }

        return table.UnknownColumns;
    }
}
