//! Functions whose last bits no standard fixes, by one library on every system: what is laid out in a browser is
//! what is laid out by the command, bit for bit. The platform's own are forbidden (`.clippy.toml`).

/// Roots of sums of squares, angles and their functions, logarithms; angles are radians.
pub trait Real {
    /// Sine of an angle.
    fn sine(self) -> f64;
    /// Its cosine.
    fn cosine(self) -> f64;
    /// Both.
    fn sine_cosine(self) -> (f64, f64);
    /// Its tangent.
    fn tangent(self) -> f64;
    /// The angle with this sine.
    fn arc_sine(self) -> f64;
    /// The angle with this cosine.
    fn arc_cosine(self) -> f64;
    /// The angle with this tangent, within a quarter turn of 0.
    fn arc_tangent(self) -> f64;
    /// The angle of the direction that rises by this over `run`.
    fn angle_over(self, run: f64) -> f64;
    /// The long side of a right triangle with this and another short side.
    fn hypotenuse(self, other: f64) -> f64;
    /// Logarithm to the base of e.
    fn natural_log(self) -> f64;
    /// Logarithm to the base of 10.
    fn decimal_log(self) -> f64;
    /// e to this power.
    fn exponential(self) -> f64;
}

/// Sums.
pub trait Total: Iterator<Item = f64> + Sized {
    /// The sum of all; of none it is 0, where the standard's own is -0 and is printed so.
    fn total(self) -> f64 {
        self.sum::<f64>() + 0.0
    }
}

impl<I: Iterator<Item = f64>> Total for I {}

impl Real for f64 {
    fn sine(self) -> f64 {
        libm::sin(self)
    }
    fn cosine(self) -> f64 {
        libm::cos(self)
    }
    fn sine_cosine(self) -> (f64, f64) {
        libm::sincos(self)
    }
    fn tangent(self) -> f64 {
        libm::tan(self)
    }
    fn arc_sine(self) -> f64 {
        libm::asin(self)
    }
    fn arc_cosine(self) -> f64 {
        libm::acos(self)
    }
    fn arc_tangent(self) -> f64 {
        libm::atan(self)
    }
    fn angle_over(self, run: f64) -> f64 {
        libm::atan2(self, run)
    }
    fn hypotenuse(self, other: f64) -> f64 {
        libm::hypot(self, other)
    }
    fn natural_log(self) -> f64 {
        libm::log(self)
    }
    fn decimal_log(self) -> f64 {
        libm::log10(self)
    }
    fn exponential(self) -> f64 {
        libm::exp(self)
    }
}

#[cfg(test)]
mod tests {
    use super::{Real, Total};

    #[test]
    fn known_triangles_and_angles() {
        assert_eq!(3.0_f64.hypotenuse(4.0), 5.0);
        let half = std::f64::consts::FRAC_PI_6;
        assert!((half.sine() - 0.5).abs() < 1e-15 && (0.5_f64.arc_sine() - half).abs() < 1e-15);
        assert!((half.sine_cosine().1 - 0.75_f64.sqrt()).abs() < 1e-15);
        assert!((half.cosine() - 0.75_f64.sqrt()).abs() < 1e-15);
        assert!(((2.0 * half).cosine().arc_cosine() - 2.0 * half).abs() < 1e-15);
        assert!((std::f64::consts::FRAC_PI_4.tangent() - 1.0).abs() < 1e-15);
        assert!((1.0_f64.arc_tangent() - std::f64::consts::FRAC_PI_4).abs() < 1e-15);
        assert!(((-1.0_f64).angle_over(-1.0) + 3.0 * std::f64::consts::FRAC_PI_4).abs() < 1e-15);
        assert_eq!(
            (1000.0_f64.decimal_log(), 1.0_f64.natural_log(), 0.0_f64.exponential()),
            (3.0, 0.0, 1.0)
        );
    }

    #[test]
    fn a_sum_of_nothing_has_no_sign() {
        assert!(std::iter::empty().total().is_sign_positive());
        assert_eq!([1.0, 2.5].into_iter().total(), 3.5);
    }
}
