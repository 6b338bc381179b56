using System.Diagnostics;
using System.Globalization;
using System.Text;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

// Times the two limits of the statistics: an apiary of 60 colonies with 20 jars, and 10,000 jars judged.
// Writes the same counts to a folder, so that R and SciPy can do the same work in the same run: see bench/Inference/run.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var folder = args.Length > 0 ? args[0] : ".";
var generator = SeededGenerator.ForPart(7, "inference");
var apiary = new (int Mites, int Bees)[20];
for (var i = 0; i < apiary.Length; i++)
{
    var bees = 250 + generator.NextInt(120);
    apiary[i] = (generator.NextPoisson(bees * generator.NextGamma(1.3) * 0.03 / 1.3), bees);
}

var jars = new (int Mites, int Bees)[10_000];
for (var i = 0; i < jars.Length; i++)
{
    var bees = 250 + generator.NextInt(120);
    jars[i] = (generator.NextPoisson(bees * generator.NextGamma(1.3) * 0.03 / 1.3), bees);
}

await WriteAsync("apiary.csv", apiary);
await WriteAsync("jars.csv", jars);

ColonyJars[] colonies = [.. apiary.Select((jar, i) => new ColonyJars($"{i + 1}", [new JarCount(jar.Mites, BeeCount.Counted(jar.Bees))]))];
var line = MiteLevel.Per100(3);
var inferred = Best("an apiary of 60 colonies with 20 jars: mean, interval, chances, every colony", 20, () => ApiaryPosterior.FromJars(colonies, 40).Outlook(line, 0.95));
var knowledge = KnowledgeBase.Load();
var reader = new JarReader(knowledge, JudgingPolicy.Of(BookState.Empty, knowledge), CultureInfo.InvariantCulture);
JarRecord[] records = [.. jars.Select(jar => new JarRecord(new DateOnly(2026, 8, 20), "alcohol-wash", [jar.Mites], JarBees.Counted(jar.Bees)))];
var judged = Best("10,000 jars judged: level, exact interval, chance over the line, standing", 5, () => records.Count(jar => reader.Stand(jar, null).Standing is not null));
var read = Best("10,000 jars read in full: the same with the sentences and the working", 3, () => records.Count(jar => reader.Read(jar, (Apiary?)null).Standing is not null));
await File.WriteAllTextAsync(Path.Combine(folder, "ours.csv"), string.Create(CultureInfo.InvariantCulture, $"apiary,{inferred}\njars,{judged}\nread,{read}\n"));

async Task WriteAsync(string name, (int Mites, int Bees)[] counts)
{
    var text = new StringBuilder("mites,bees\n");
    foreach (var (mites, bees) in counts)
        text.Append(CultureInfo.InvariantCulture, $"{mites},{bees}\n");
    await File.WriteAllTextAsync(Path.Combine(folder, name), text.ToString());
}

static double Best<T>(string what, int times, Func<T> work)
{
    work();
    var best = double.MaxValue;
    for (var i = 0; i < times; i++)
    {
        var from = Stopwatch.GetTimestamp();
        GC.KeepAlive(work());
        best = Math.Min(best, Stopwatch.GetElapsedTime(from).TotalMilliseconds);
    }

    Console.WriteLine($"{best,9:0.0} ms  {what}");
    return best;
}
