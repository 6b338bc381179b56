using Foundress.Science.Forecasting;

namespace Foundress.Book.Forecasting;

/// <summary>What is foretold of a jar, and how well the record carried it.</summary>
/// <param name="Wish">The jar.</param>
/// <param name="Prediction">The chance of every count.</param>
/// <param name="Report">How well the particles carried the colony's counts.</param>
public sealed record JarForecast(JarWish Wish, JarPrediction Prediction, FilterReport Report);
