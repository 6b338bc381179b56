using Foundress.Book.Proving;
using Foundress.Science.Verifying;

namespace Foundress.Cli.Output;

/// <summary>The proof of a control as JSON. Shares: 0.9 is 90 %; below 0 when there were more mites than before.</summary>
internal sealed record ProofOutput(
    string Use, string Apiary, string Agent, DateOnly Start, Verdict? Verdict, double? Efficacy, double? Low, double? High, double? Target,
    Correction Correction, double? Uncorrected, int Colonies, bool ResistancePossible, bool ReinvasionSuspected,
    IReadOnlyList<string> Doubts, IReadOnlyList<string> NextGroups, string Sentence)
{
    internal static ProofOutput Of(ControlProof proof, string apiary)
    {
        var interval = proof.Outcome.Efficacy?.Interval(proof.Test?.Confidence ?? 0.9);
        return new(
            proof.Control.Id.ToString(), apiary, proof.Control.Facts.Agent, proof.Control.Facts.Start, proof.Verdict,
            proof.Outcome.Efficacy?.Median, interval?.Lower, interval?.Upper, proof.Test?.Target, proof.Correction, proof.Plain.Efficacy?.Median,
            proof.Colonies.Count(colony => colony.Why is null), proof.ResistanceSignal, proof.ReinvasionSuspected, proof.Doubts,
            [.. proof.NextGroups.Select(group => group.Title)], proof.Sentence);
    }
}
