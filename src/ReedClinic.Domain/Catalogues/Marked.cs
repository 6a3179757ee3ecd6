using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Catalogues;

/// <summary>A value with how it is known beside it: the mark travels with the number.</summary>
/// <typeparam name="T">What it is a value of.</typeparam>
/// <param name="Value">The value.</param>
/// <param name="Mark">How it is known.</param>
public readonly record struct Marked<T>(T Value, EvidenceMark Mark);

/// <summary>The lasting name of something that can be behind a reed’s trouble, such as <c>tip-corners-thick</c>.</summary>
/// <param name="Value">Small letters and hyphens; never renamed once it has been stored.</param>
public readonly record struct CauseId(string Value);

/// <summary>The lasting name of something that can be seen, heard or felt, such as <c>crow-high</c>.</summary>
/// <param name="Value">Small letters and hyphens; never renamed once it has been stored.</param>
public readonly record struct SignId(string Value);

/// <summary>The lasting name of a way to try a reed, such as <c>seal-blow</c>.</summary>
/// <param name="Value">Small letters and hyphens; never renamed once it has been stored.</param>
public readonly record struct TestCardId(string Value);
