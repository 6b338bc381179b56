using Foundress.Book.Seasons;

namespace Foundress.Cli.Output;

/// <summary>One apiary's part of a plan; the next due date is known only for apiaries of the book.</summary>
internal sealed record PlanApiary(string Apiary, int Colonies, int Take, DueMark? Due);
