using Foundress.Book.Seasons;

namespace Foundress.Cli.Output;

/// <summary>One apiary's part of a plan; the next due date is known only for apiaries of the book, what the jars buy only when asked for.</summary>
internal sealed record PlanApiary(string Apiary, int Colonies, int Take, DueMark? Due, PlanDesign? Design = null);
