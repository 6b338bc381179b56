using System.CommandLine;
using Foundress.Book.Journal;
using Foundress.Book.Proving;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress proof</c>: whether the controls of the book worked.</summary>
internal static class ProofCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = CommonOptions.Apiaries();
        var from = new Option<string?>("--from") { Description = BookCommandTexts.ProofFrom, HelpName = SharedTexts.WordDay };
        var plain = new Option<bool>("--uncorrected") { Description = BookCommandTexts.ProofUncorrected };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("proof", BookCommandTexts.Proof) { apiary, from, plain, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var first = parsed.GetValue(from) is { } day ? CommonOptions.PastDay("--from", day, around) : around.Today.AddYears(-1);
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var knowledge = KnowledgeBase.Load();
            var growth = new GrowthForecaster(book.Ledger.Entries, state, knowledge);
            var proofs = new ControlProofs(state, knowledge, around.Today, around.Culture, parsed.GetValue(plain) ? null : growth.Of);
            ControlId[] wanted = [.. ApiaryArgument.Find(ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []), state).SelectMany(state.ControlsIn).Select(control => control.Id).Distinct()];
            var found = wanted.Select(id => state.Controls[id])
                .Where(control => control.Facts.Start >= first)
                .OrderByDescending(control => control.Facts.Start)
                .Select(control => ProofOutput.Of(proofs.Of(control), Place(control, state)))
                .ToArray();
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, found);
            else
                Write(around.Out, found);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static string Place(Control control, BookState state) => string.Join(", ", control.Facts.Colonies
        .Select(id => state.Colonies.GetValueOrDefault(id)).OfType<Colony>()
        .Select(colony => state.Apiaries.GetValueOrDefault(colony.ApiaryOn(control.Facts.Start))?.Name ?? "?").Distinct());

    private static void Write(TextWriter text, ProofOutput[] proofs)
    {
        foreach (var proof in proofs)
        {
            text.WriteLine($"{Say.Day(proof.Start)}, {proof.Apiary}: {proof.Sentence}");
            foreach (var doubt in proof.Doubts)
                text.WriteLine($"  {doubt}");
            if (proof.NextGroups.Count > 0)
                text.WriteLine("  " + BookCommandTexts.FormatProofNextGroups(string.Join(", ", proof.NextGroups)));
        }

        if (proofs.Length == 0)
            text.WriteLine(BookCommandTexts.ProofNone);
    }
}
