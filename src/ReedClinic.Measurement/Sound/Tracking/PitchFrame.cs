namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>The pitch at one moment.</summary>
/// <param name="Seconds">When, from the clip’s beginning.</param>
/// <param name="Hertz">The pitch; 0 where none is heard.</param>
/// <param name="PlusMinusCents">One standard deviation of its error, as far as it comes from noise; 0 where none is heard.</param>
/// <param name="Aperiodicity">YIN’s measure: 0 for what repeats exactly, about 1 for noise.</param>
public readonly record struct PitchFrame(double Seconds, double Hertz, double PlusMinusCents, double Aperiodicity)
{
    /// <summary>True where a pitch is heard.</summary>
    public bool IsVoiced => Hertz > 0;
}
